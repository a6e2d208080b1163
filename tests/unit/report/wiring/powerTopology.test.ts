import { describe, expect, it } from 'vitest';
import { renderWiring } from '../../../../src/report/wiring/renderWiring.ts';
import { type Point, type ReadDrawing, readDrawing } from './readDrawing.ts';
import { reachable, rebuildNetwork } from './rebuildNetwork.ts';
import { SYMBOL_SETS, variant } from './variants.ts';

const RESISTORS = {
  lineResistors: { resistance: 1, closingTime: 0.02, openingTime: 0.01, bypassAfter: null },
} as const;

/** What the conductors of a drawing connect each motor terminal with while contactors are in. */
function phases(drawing: ReadDrawing, closed: readonly string[], open: readonly string[] = []): string {
  const network = rebuildNetwork(drawing);
  const through = drawing.symbols.filter(({ data }) => {
    if (data.symbol === 'pole') return closed.includes(bare(data.designation));
    return (
      ['disconnector', 'fuse', 'heater', 'resistor'].includes(data.symbol ?? '') &&
      !open.includes(bare(data.designation))
    );
  });
  const lines = drawing.symbols.filter(({ data }) => data.symbol === 'supply');
  const motor = drawing.symbols.find(({ data }) => data.symbol === 'motor')!;
  const reach = lines.map(({ ends, data }) => ({
    line: data.line!,
    nodes: reachable(network, ends[0]!, through),
  }));
  const at = (terminal: Point) =>
    reach
      .filter(({ nodes }) => nodes.has(network.node(terminal)))
      .map(({ line }) => line)
      .join('+') || '-';
  return motor.ends.slice(0, 3).map(at).join(' ');
}

function bare(designation: string | undefined): string {
  return (designation ?? '').replace(/^-/u, '');
}

describe.each(SYMBOL_SETS)('a power circuit drawn with %s symbols', (symbols) => {
  const drawn = (more: Parameters<typeof variant>[3] = {}) => {
    const { circuit, options } = variant('plugStop', symbols, [], more);
    return readDrawing(renderWiring(circuit, options));
  };

  // Stated here anew: exchanging two phases leaves the third where it was.
  it.each([
    ['AB', 'L2 L1 L3'],
    ['BC', 'L1 L3 L2'],
    ['CA', 'L3 L2 L1'],
  ] as const)('connects U, V, W in order through K1 and with %s exchanged through K2', (pair, through) => {
    for (const more of [{}, RESISTORS]) {
      const drawing = drawn({ exchangedPhases: pair, ...more });
      expect(rebuildNetwork(drawing).faults).toEqual([]);
      expect(phases(drawing, ['K1'])).toBe('L1 L2 L3');
      expect(phases(drawing, ['K2'])).toBe(through);
      expect(phases(drawing, [])).toBe('- - -');
    }
  });

  it('shorts two lines when both contactors are in, which is what the interlocks are for', () => {
    expect(phases(drawn(), ['K1', 'K2'])).toBe('L1 L2+L3 L2+L3');
  });

  it('has the bypass contactor across the line resistors', () => {
    const drawing = drawn(RESISTORS);
    expect(phases(drawing, ['K1'], ['R1'])).toBe('- - -');
    expect(phases(drawing, ['K1', 'K10'], ['R1'])).toBe('L1 L2 L3');
  });

  it.each(['Q1', 'F1', 'F2'])('has %s in all three lines', (designation) => {
    expect(phases(drawn(), ['K1'], [designation])).toBe('- - -');
  });

  it('feeds the control transformer from the first two lines, behind the disconnector and its own fuses', () => {
    const drawing = drawn();
    const network = rebuildNetwork(drawing);
    const transformer = drawing.symbols.find(({ data }) => data.symbol === 'transformer')!;
    const of = (...designations: string[]) =>
      drawing.symbols.filter(({ data }) => designations.includes(bare(data.designation)));
    const lines = drawing.symbols.filter(({ data }) => data.symbol === 'supply');
    const feeds = (through: string[]) =>
      transformer.ends.slice(0, 2).map((end) =>
        lines
          .filter(({ ends }) => reachable(network, ends[0]!, of(...through)).has(network.node(end)))
          .map(({ data }) => data.line)
          .join('+'),
      );
    expect(feeds(['Q1', 'F3'])).toEqual(['L1', 'L2']);
    expect(feeds(['F3'])).toEqual(['', '']);
    expect(feeds(['Q1'])).toEqual(['', '']);
  });

  it('earths the motor and the return conductor of the control circuit, and nothing else', () => {
    const drawing = drawn();
    const network = rebuildNetwork(drawing);
    const earths = drawing.symbols.filter(({ data }) => data.symbol === 'earth');
    const motor = drawing.symbols.find(({ data }) => data.symbol === 'motor')!;
    const transformer = drawing.symbols.find(({ data }) => data.symbol === 'transformer')!;
    expect(earths.map(({ ends }) => network.node(ends[0]!)).sort()).toEqual(
      [network.node(motor.ends[3]!), network.node(transformer.ends[3]!)].sort(),
    );
  });

  it('shows the mechanical interlock only where there is one', () => {
    const { circuit, options, starter } = variant('direct', symbols, []);
    const without = { ...starter, control: { ...starter.control!, mechanicalInterlock: false } };
    const count = (svg: string) => svg.split('data-symbol="mechanicalInterlock"').length - 1;
    expect(count(renderWiring(circuit, options))).toBe(1);
    expect(count(renderWiring(circuit, { ...options, starter: without }))).toBe(0);
  });

  it('shows the zero-speed switch on the shaft only where there is one', () => {
    const onShaft = (scheme: 'direct' | 'plugStop', more = {}) => {
      const { circuit, options } = variant(scheme, symbols, [], more);
      return renderWiring(circuit, options).includes('data-symbol="speedSwitch"');
    };
    expect(onShaft('plugStop')).toBe(true);
    expect(onShaft('direct')).toBe(false);
    expect(onShaft('direct', { zeroSpeedSwitch: { pickUpSpeed: 9, dropOutSpeed: 5, delay: 0 } })).toBe(true);
  });
});
