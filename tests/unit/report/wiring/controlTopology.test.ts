import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renderWiring } from '../../../../src/report/wiring/renderWiring.ts';
import { schemeStarter } from '../../../../src/report/wiring/schemeStarter.ts';
import type {
  CoilCircuit,
  Contact,
  ControlCircuit,
  Network,
} from '../../../../src/starter/control/controlCircuit.ts';
import {
  conductingBranches,
  conducts,
  type Positions,
  wiringConducts,
} from '../../../../src/starter/control/evaluate.ts';
import { positionsFor } from './positionsFor.ts';
import { type ReadDrawing, type ReadSymbol, readDrawing } from './readDrawing.ts';
import { reachable, rebuildNetwork } from './rebuildNetwork.ts';
import { allVariants, drawingOf, SYMBOL_SETS } from './variants.ts';

/** Coils that the table energises. */
function byTable(circuit: ControlCircuit, positions: Positions): string[] {
  return circuit.coils
    .filter(
      (coil) =>
        wiringConducts(circuit, coil, positions, []) && conductingBranches(coil, positions, []).length > 0,
    )
    .map(({ coil }) => coil)
    .sort();
}

/** Reads a drawing as an electrician does: which coils lie at both ends of the control transformer's secondary. */
function reader(drawing: ReadDrawing): (positions: Positions) => string[] {
  const network = rebuildNetwork(drawing);
  const of = (kind: string) => drawing.symbols.filter(({ data }) => data.symbol === kind);
  const [supply, back] = of('transformer')[0]!.ends.slice(2);
  const fuses = of('fuse');
  const coils = of('coil');
  const contacts = of('contact');
  return (positions) => {
    const closed = contacts.filter((symbol) => conducts(contactOf(symbol), positions, []));
    const live = reachable(network, supply!, [...fuses, ...closed]);
    if (live.has(network.node(back!))) return ['short circuit'];
    return coils
      .filter(
        ({ ends: [a1, a2] }) => live.has(network.node(a1!)) && network.node(a2!) === network.node(back!),
      )
      .map(({ data }) => data.device!)
      .sort();
  };
}

function contactOf({ data }: ReadSymbol): Contact {
  return data as unknown as Contact;
}

describe.each(SYMBOL_SETS)('a control circuit drawn with %s symbols', (symbols) => {
  const variants = allVariants(symbols);
  const drawings = variants.map(drawingOf);

  it('energises exactly the coils that its table energises, in every scheme and with every part', () => {
    const wrong: string[] = [];
    for (const [i, { name, circuit }] of variants.entries()) {
      const energised = reader(drawings[i]!);
      for (const positions of positionsFor(circuit, 9)) {
        const expected = byTable(circuit, positions);
        const drawn = energised(positions);
        if (drawn.join() !== expected.join())
          wrong.push(`${name}: ${drawn} for ${expected} at ${JSON.stringify(positions)}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('is asked in positions that energise every coil and in some that do not', () => {
    for (const { name, circuit } of variants) {
      const outcomes = positionsFor(circuit, 9).map((positions) => byTable(circuit, positions));
      for (const { coil } of circuit.coils) {
        expect(
          outcomes.some((on) => on.includes(coil)),
          `${name}: ${coil} energised`,
        ).toBe(true);
        expect(
          outcomes.some((on) => !on.includes(coil)),
          `${name}: ${coil} not energised`,
        ).toBe(true);
      }
    }
  });

  it('has a dot wherever three conductors meet, and nowhere else', () => {
    for (const [i, { name }] of variants.entries()) {
      const drawing = drawings[i]!;
      expect(rebuildNetwork(drawing).faults, name).toEqual([]);
      const ends = [
        ...drawing.symbols.flatMap((symbol) => symbol.ends),
        ...drawing.wires.flatMap((wire) => [wire[0]!, wire.at(-1)!]),
      ];
      for (const dot of drawing.dots)
        expect(
          ends.some(({ x, y }) => x === dot.x && y === dot.y),
          `${name}: a dot where nothing ends, at ${dot.x}, ${dot.y}`,
        ).toBe(true);
    }
  });

  it('is right for any contacts in series and parallel, however nested', () => {
    fc.assert(
      fc.property(anyCircuit, (circuit) => {
        const starter = schemeStarter('direct');
        const drawing = readDrawing(renderWiring(circuit, { starter, symbols }));
        expect(rebuildNetwork(drawing).faults).toEqual([]);
        const energised = reader(drawing);
        for (const positions of positionsFor(circuit, 8))
          expect(energised(positions)).toEqual(byTable(circuit, positions));
      }),
      { numRuns: 40, seed: 4 },
    );
  });
});

const anyContact: fc.Arbitrary<Contact> = fc.record({
  device: fc.constantFrom(
    'stopButton' as const,
    'forwardButton' as const,
    'reverseButton' as const,
    'overload' as const,
    'ready' as const,
    'switchForward' as const,
  ),
  kind: fc.constantFrom('make' as const, 'break' as const),
  terminals: fc.constantFrom('13-14', '21-22'),
});

const { network: anyNetwork } = fc.letrec<{ network: Network }>((tie) => ({
  network: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    anyContact,
    fc.array(tie('network'), { maxLength: 3 }).map((series) => ({ series })),
    fc.array(tie('network'), { minLength: 1, maxLength: 3 }).map((parallel) => ({ parallel })),
  ),
}));

/** Beginning alike as often as not, so that contacts are shared where they may be. */
const anyBranch = fc
  .tuple(fc.boolean(), anyNetwork)
  .map(([alike, network]): Network => {
    const first: Contact = { device: 'stopButton', kind: 'break', terminals: '11-12' };
    return alike ? { series: [first, network] } : network;
  })
  .map((network) => ({ purpose: 'command' as const, network }));

const anyCoil = (coil: CoilCircuit['coil']): fc.Arbitrary<CoilCircuit> =>
  fc
    .record({ guard: anyNetwork, branches: fc.array(anyBranch, { minLength: 1, maxLength: 3 }) })
    .map((parts) => ({ coil, ...parts }));

const anyCircuit: fc.Arbitrary<ControlCircuit> = fc
  .record({
    feed: fc.array(anyContact, { maxLength: 3 }).map((series) => ({ series })),
    coils: fc.tuple(anyCoil('ready'), anyCoil('forwardContactor'), anyCoil('reverseContactor')),
  })
  .map((parts) => ({ title: 'Any', ...parts }));
