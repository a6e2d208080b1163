import { describe, expect, it } from 'vitest';
import type { CoilDevice } from '../../../../src/starter/control/controlCircuit.ts';
import type { ReadDrawing, ReadSymbol } from './readDrawing.ts';
import { drawingOf, someVariants, variant } from './variants.ts';

function contactsOf(drawing: ReadDrawing, device: string): readonly ReadSymbol[] {
  return drawing.symbols.filter(({ data }) => data.symbol === 'contact' && data.device === device);
}

function coilsOf(drawing: ReadDrawing): readonly ReadSymbol[] {
  return drawing.symbols.filter(({ data }) => data.symbol === 'coil');
}

/** Whether the little symbol in a line of a list shows a make or a break contact. */
function markAt(drawing: ReadDrawing, x: number, y: number): string | undefined {
  return drawing.symbols.find(
    ({ data, at }) => data.symbol === 'listMark' && Math.abs(at.x - x) < 31 && Math.abs(at.y - y) < 5,
  )?.data.kind;
}

describe('references under the coils of an IEC drawing', () => {
  it('list every contact of the coil’s device with the number that stands over its path', () => {
    for (const one of someVariants('iec')) {
      const { name } = one;
      const drawing = drawingOf(one);
      const numbers = drawing.texts.filter(({ text, anchor }) => /^\d+$/u.test(text) && anchor === 'middle');
      for (const coil of coilsOf(drawing)) {
        const listed = drawing.texts
          .filter(({ text, x, y }) => text.includes(' /') && Math.abs(x - coil.at.x) < 31 && y > coil.at.y)
          .map(({ text, y }) => `${markAt(drawing, coil.at.x, y)} ${text}`)
          .sort();
        const found = contactsOf(drawing, coil.data.device!)
          .map(
            ({ at, data }) => `${data.kind} ${data.terminals} /${numbers.find(({ x }) => x === at.x)?.text}`,
          )
          .sort();
        expect(listed, `${name}: ${coil.data.device}`).toEqual(found);
      }
    }
  });

  it('name the main contacts of the contactors alone', () => {
    const one = variant('plugStopBoth', 'iec', ['memoryRelay']);
    const drawing = drawingOf(one);
    const main = drawing.texts.filter(({ text }) => text === '1-2, 3-4, 5-6').map(({ x }) => x + 30);
    const contactors = coilsOf(drawing).filter(({ data }) =>
      ['forwardContactor', 'reverseContactor'].includes(data.device!),
    );
    expect(main).toEqual(contactors.map(({ at }) => at.x));
  });

  it('number the paths from left to right without a gap', () => {
    for (const one of someVariants('iec')) {
      const { texts } = drawingOf(one);
      const numbers = texts
        .filter(({ text, anchor }) => /^\d+$/u.test(text) && anchor === 'middle')
        .sort((a, b) => a.x - b.x);
      expect(numbers.map(({ text }) => Number(text))).toEqual(numbers.map((_, i) => i + 1));
    }
  });
});

describe('references beside the coils of a North American drawing', () => {
  it('list the lines of every contact of the coil’s device, those of break contacts underlined', () => {
    for (const one of someVariants('us')) {
      const { name } = one;
      const drawing = drawingOf(one);
      const numbers = drawing.texts.filter(({ text, anchor }) => /^\d+$/u.test(text) && anchor === 'end');
      const lineOf = (y: number) => numbers.find((number) => Math.abs(number.y - 4 - y) < 0.01)?.text ?? '?';
      for (const coil of coilsOf(drawing)) {
        const beside = drawing.texts.find(
          ({ x, y }) => Math.abs(y - 4 - coil.at.y) < 0.01 && x > coil.at.x + 40,
        );
        const listed =
          /\((.*)\)/u
            .exec(beside?.text ?? '')?.[1]
            ?.split(', ')
            .sort() ?? [];
        const contacts = contactsOf(drawing, coil.data.device!);
        const lines = contacts.map(({ at }) => lineOf(at.y));
        expect(listed, `${name}: ${coil.data.device}`).toEqual(lines.sort());
        const breaks = contacts.filter(({ data }) => data.kind === 'break').map(({ at }) => lineOf(at.y));
        expect([...(beside?.underlined ?? [])].sort()).toEqual(breaks.sort());
      }
    }
  });
});

describe('a timer', () => {
  it.each([
    ['iec', 'reverseTimer', '0.05 s'],
    ['iec', 'limitTimer', '4 s'],
    ['us', 'reverseTimer', 'on-delay 0.05 s (7)'],
    ['us', 'limitTimer', 'off-delay 4 s (2)'],
  ] as const)('drawn with %s symbols states its setting: %s', (symbols, device, words) => {
    const one = variant('direct', symbols, ['changeoverTimer', 'category1', 'readyRelay']);
    const drawing = drawingOf(one);
    expect(coilsOf(drawing).map(({ data }) => data.device)).toContain(device satisfies CoilDevice);
    expect(drawing.texts.map(({ text }) => text)).toContain(words);
  });
});
