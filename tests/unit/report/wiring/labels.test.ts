import { describe, expect, it } from 'vitest';
import { textWidth } from '../../../../src/report/svgLayout.ts';
import { allContacts, DESIGNATIONS, DEVICE_WORDS } from '../../../../src/starter/control/controlCircuit.ts';
import type { Point, ReadDrawing, ReadText } from './readDrawing.ts';
import { drawingOf, SYMBOL_SETS, someVariants } from './variants.ts';

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Letters reach 0.74 of their size above the baseline; few of these texts reach below it. */
function boxOf({ text, x, y, size, anchor }: ReadText): Box {
  const width = textWidth(text, size);
  const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
  return { left, right: left + width, top: y - 0.74 * size, bottom: y + 0.05 * size };
}

function meet(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

/** True where a straight line touches a box: none of the four sides has both ends beyond it, nor the line all corners on one side. */
function crosses([from, to]: readonly [Point, Point], box: Box): boolean {
  if (Math.max(from.x, to.x) <= box.left || Math.min(from.x, to.x) >= box.right) return false;
  if (Math.max(from.y, to.y) <= box.top || Math.min(from.y, to.y) >= box.bottom) return false;
  const side = (x: number, y: number) => (to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x);
  const sides = [
    side(box.left, box.top),
    side(box.right, box.top),
    side(box.left, box.bottom),
    side(box.right, box.bottom),
  ];
  return Math.min(...sides) < 0 && Math.max(...sides) > 0;
}

function linesOf(drawing: ReadDrawing): (readonly [Point, Point])[] {
  return [
    ...drawing.wires.flatMap((wire) => wire.slice(1).map((to, i) => [wire[i]!, to] as const)),
    ...drawing.symbols.flatMap(({ pieces }) => pieces),
  ];
}

describe.each(SYMBOL_SETS)('the labels of a drawing with %s symbols', (symbols) => {
  const variants = someVariants(symbols);

  it('do not overlap', () => {
    const found: string[] = [];
    for (const one of variants) {
      const { name } = one;
      const { texts } = drawingOf(one);
      const boxes = texts.map(boxOf);
      for (const [i, a] of boxes.entries())
        for (const [k, b] of boxes.entries())
          if (k > i && meet(a, b))
            found.push(`${name}: "${texts[i]!.text}" and "${texts[k]!.text}" at ${b.left}, ${b.top}`);
    }
    expect(found).toEqual([]);
  });

  it('are crossed by no conductor and no symbol, and lie inside the frame', () => {
    const found: string[] = [];
    for (const one of variants) {
      const { name } = one;
      const drawing = drawingOf(one);
      const lines = linesOf(drawing);
      for (const text of drawing.texts) {
        const box = boxOf(text);
        const line = lines.find((piece) => crosses(piece, box));
        if (line !== undefined) found.push(`${name}: "${text.text}" at ${text.x}, ${text.y}`);
        if (box.left < 8 || box.top < 8 || box.right > drawing.width - 8 || box.bottom > drawing.height - 8)
          found.push(`${name}: "${text.text}" is outside`);
      }
    }
    expect(found).toEqual([]);
  });

  it('name every contact of the table: its designation and both terminal marks stand beside it', () => {
    for (const one of variants) {
      const { name } = one;
      const drawing = drawingOf(one);
      for (const { data, at } of drawing.symbols.filter((symbol) => symbol.data.symbol === 'contact')) {
        const near = drawing.texts
          .filter(({ x, y }) => Math.abs(x - at.x) < 30 && Math.abs(y - at.y) < 30)
          .map(({ text }) => text.replace(/^-/u, '').split(' ')[0]);
        const designation = DESIGNATIONS[data.device as keyof typeof DESIGNATIONS];
        for (const mark of [designation, ...data.terminals!.split('-')])
          expect(near, `${name}: ${designation} ${data.terminals}`).toContain(mark);
      }
    }
  });

  it('are explained: every designation has its words in the legend', () => {
    for (const one of variants) {
      const { circuit } = one;
      const { texts } = drawingOf(one);
      const devices = new Set([
        ...allContacts(circuit).map(({ device }) => device),
        ...circuit.coils.map(({ coil }) => coil),
      ]);
      for (const device of devices) {
        const words = DEVICE_WORDS[device].replace(/ \(.*/u, '');
        const line = texts.find(({ text }) => text.startsWith(words));
        expect(texts.map(({ text }) => text)).toContainEqual(expect.stringMatching(`^${words}`));
        const beside = texts.filter(({ y, x }) => y === line!.y && x < line!.x).at(-1);
        expect(beside?.text.replace(/^-/u, '')).toBe(DESIGNATIONS[device]);
      }
    }
  });

  it('fit on A4 across inside margins of 10 mm and are legible: no letter is below 1.6 mm (common practice, no source)', () => {
    for (const one of variants) {
      const { name } = one;
      const { width, height, texts } = drawingOf(one);
      expect(width / height, name).toBeGreaterThan(277 / 190);
      expect(width / height, name).toBeLessThan(1.5);
      const smallest = Math.min(...texts.map(({ size }) => size));
      expect((smallest / width) * 277, name).toBeGreaterThan(1.6);
    }
  });
});
