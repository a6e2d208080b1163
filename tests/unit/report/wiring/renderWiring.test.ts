import { describe, expect, it } from 'vitest';
import { renderWiring } from '../../../../src/report/wiring/renderWiring.ts';
import { planCoils } from '../../../../src/report/wiring/sharedHeads.ts';
import type { CoilCircuit, Contact } from '../../../../src/starter/control/controlCircuit.ts';
import { readDrawing } from './readDrawing.ts';
import { drawingOf, SYMBOL_SETS, someVariants, variant } from './variants.ts';

describe.each(SYMBOL_SETS)('a circuit drawing with %s symbols', (symbols) => {
  const { circuit, options } = variant('plugStop', symbols, ['memoryRelay', 'category1']);

  it('is the same to the byte for the same input', () => {
    for (const one of someVariants(symbols))
      expect(renderWiring(one.circuit, one.options)).toBe(renderWiring(one.circuit, one.options));
  });

  it('is black on white and fetches nothing', () => {
    const svg = renderWiring(circuit, options);
    const colours = [...svg.matchAll(/(?:fill|stroke)="([^"]*)"/gu)].map(([, colour]) => colour);
    expect(new Set(colours)).toEqual(new Set(['#000000', '#FFFFFF', 'none']));
    expect(svg.replace('http://www.w3.org/2000/svg', '')).not.toMatch(/href|url\(|http|<style|<script/u);
  });

  it('has a title and, for people who cannot see it, the circuit in words', () => {
    const svg = renderWiring(circuit, { ...options, idSuffix: '-2' });
    expect(svg).toContain('role="img" aria-labelledby="wiring-2-title wiring-2-desc"');
    expect(svg).toContain('<title id="wiring-2-title">Circuit diagram: Plug to stop, one direction</title>');
    const words = /<desc id="wiring-2-desc">(.*?)<\/desc>/u.exec(svg)?.[1];
    expect(words).toContain('Feed: F2 95-96 (break) and K9 17-18 (make).');
    expect(words).toContain('Coil K9, ahead of the feed: S4 11-12 (break).');
    expect(words).toContain(
      'Coil K1: S4 21-22 (break) and S0 11-12 (break) and (S1 13-14 (make) or K1 13-14 (make)) and K2 21-22 (break).',
    );
  });

  it('says that it is no drawing to build from, what state it shows, and what it leaves out', () => {
    const { options: full, circuit: whole } = someVariants(symbols)[1]!;
    const words = readDrawing(renderWiring(whole, full)).texts.map(({ text }) => text);
    expect(words).toContain(
      'Not for construction without review. Local codes and a licensed electrician decide.',
    );
    expect(words).toContain('Drawn at rest: no voltage, no button pressed, shaft at rest.');
    expect(words).toContain('The coil of K10 is not in the control circuit drawn here.');
    expect(words).toContain('The contactors that connect the windings in star while plugging are not drawn.');
    expect(words.join()).toContain('A program stands in for the contacts above the interlocks');
    expect(words).toContain('Roller table');
  });

  it('lets no title break out of its text, and cuts one that is too long', () => {
    const hostile = `</text><script>alert(1)</script>&"' ${'long '.repeat(60)}`;
    const svg = renderWiring(circuit, { ...options, title: hostile });
    expect(svg).not.toContain('<script');
    expect(svg).toContain('&lt;/text&gt;&lt;script&gt;');
    expect(readDrawing(svg).texts.some(({ text }) => text.startsWith('</text>') && text.endsWith('…'))).toBe(
      true,
    );
  });

  it('has symbols whose lines reach the places where conductors meet them', () => {
    for (const one of someVariants(symbols)) {
      const { symbols: found } = drawingOf(one);
      for (const { data, ends, pieces } of found.filter(
        ({ data: { symbol } }) => symbol !== 'motor' && symbol !== 'supply',
      ))
        for (const end of ends)
          expect(
            pieces.flat().some(({ x, y }) => Math.abs(x - end.x) < 0.01 && Math.abs(y - end.y) < 0.01),
            `${one.name}: ${JSON.stringify(data)} at ${end.x}, ${end.y}`,
          ).toBe(true);
    }
  });
});

describe('contacts that several branches begin with', () => {
  const contact = (device: Contact['device'], kind: Contact['kind'], terminals: string): Contact => ({
    device,
    kind,
    terminals,
  });
  const stop = contact('stopButton', 'break', '11-12');
  const brake = contact('switchForward', 'make', '13-14');
  const coil = (name: CoilCircuit['coil'], ...branches: Contact[][]): CoilCircuit => ({
    coil: name,
    guard: { series: [] },
    branches: branches.map((series) => ({ purpose: 'command', network: { series } })),
  });
  const heads = (...coils: CoilCircuit[]) =>
    planCoils(coils).map(({ branches }) => branches.map(({ head }) => head?.contacts.length ?? 0));

  it('are taken together where neither coil has another way to be energised', () => {
    const first = coil('forwardContactor', [stop, contact('forwardButton', 'make', '13-14')]);
    const second = coil('reverseContactor', [stop, contact('reverseButton', 'make', '13-14')]);
    expect(heads(first, second)).toEqual([[1], [1]]);
  });

  it('are not where the other way of one could feed back into the other coil', () => {
    const first = coil('forwardContactor', [brake], [stop, contact('forwardButton', 'make', '13-14')]);
    const second = coil('reverseContactor', [stop, contact('reverseButton', 'make', '13-14')]);
    expect(heads(first, second)).toEqual([[0, 0], [0]]);
  });

  it('are where a button’s break contact bars the way back', () => {
    const button = (kind: Contact['kind']) => contact('forwardButton', kind, kind);
    const first = coil('forwardContactor', [brake], [stop, button('make')]);
    const second = coil('reverseContactor', [stop, button('break')]);
    expect(heads(first, second)).toEqual([[0, 1], [1]]);
  });
});
