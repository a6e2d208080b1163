import { describe, expect, it } from 'vitest';
import { allContacts, type Contact } from '../../../../src/starter/control/controlCircuit.ts';
import type { Point, ReadSymbol } from './readDrawing.ts';
import { allVariants, drawingOf, SYMBOL_SETS, variant } from './variants.ts';

describe.each(SYMBOL_SETS)('the contacts of a drawing with %s symbols', (symbols) => {
  const nameOf = ({ device, kind, terminals }: Contact) => `${device} ${kind} ${terminals}`;

  it('are those of the table, each once, though the table states a shared one in every branch', () => {
    for (const one of allVariants(symbols)) {
      const drawn = drawingOf(one)
        .symbols.filter(({ data }) => data.symbol === 'contact')
        .map(({ data }) => nameOf(data as unknown as Contact))
        .sort();
      const stated = [...new Set(allContacts(one.circuit).map(nameOf))].sort();
      expect(drawn, one.name).toEqual(stated);
    }
  });

  it('are drawn as what moves them: late ones of timers, speed, overload, buttons', () => {
    const one = variant('plugStopBoth', symbols, ['changeoverTimer', 'category1', 'readyRelay']);
    const operations = new Map(
      drawingOf(one)
        .symbols.filter(({ data }) => data.symbol === 'contact')
        .map(({ data }) => [data.device, data.operation]),
    );
    expect(Object.fromEntries(operations)).toEqual({
      overload: 'overload',
      limitTimer: 'offDelay',
      emergencyStop: 'emergencyStop',
      resetButton: 'pushButton',
      forwardButton: 'pushButton',
      reverseButton: 'pushButton',
      stopButton: 'pushButton',
      ready: 'coil',
      forwardContactor: 'coil',
      reverseContactor: 'coil',
      forwardRun: 'coil',
      reverseRun: 'coil',
      forwardTimer: 'onDelay',
      reverseTimer: 'onDelay',
      switchForward: 'speed',
      switchReverse: 'speed',
    });
  });

  it('are open at rest if they make, closed if they break', () => {
    for (const one of allVariants(symbols))
      for (const found of drawingOf(one).symbols.filter(({ data }) => data.symbol === 'contact')) {
        const closed = symbols === 'iec' ? isJoined(found) : isStruckThrough(found);
        expect(closed, `${one.name}: ${JSON.stringify(found.data)}`).toBe(found.data.kind === 'break');
      }
  });
});

/** IEC: an unbroken way along the lines from one end to the other. Links to what moves the contact lead nowhere. */
function isJoined({ ends, pieces }: ReadSymbol): boolean {
  const [from, to] = ends;
  const reached = new Set(pieces.filter((piece) => touches(piece, [from!, from!])));
  for (let size = 0; size !== reached.size; ) {
    size = reached.size;
    for (const piece of pieces) if ([...reached].some((other) => touches(piece, other))) reached.add(piece);
  }
  return [...reached].some((piece) => touches(piece, [to!, to!]));
}

/** North America: a stroke through the middle, the slash or the button's bar and stem. */
function isStruckThrough({ at, pieces }: ReadSymbol): boolean {
  return pieces.some((piece) => touches(piece, [at, at]));
}

type Piece = ReadSymbol['pieces'][number];

/** True where two straight pieces have a point in common. */
function touches([a, b]: Piece, [c, d]: Piece): boolean {
  const side = (p: Point, q: Point, r: Point) =>
    Math.sign(Math.round(((q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x)) * 100));
  const overlap = (...[p, q, r, s]: readonly [number, number, number, number]) =>
    Math.max(p, q) >= Math.min(r, s) && Math.max(r, s) >= Math.min(p, q);
  return (
    overlap(a.x, b.x, c.x, d.x) &&
    overlap(a.y, b.y, c.y, d.y) &&
    side(a, b, c) * side(a, b, d) <= 0 &&
    side(c, d, a) * side(c, d, b) <= 0
  );
}
