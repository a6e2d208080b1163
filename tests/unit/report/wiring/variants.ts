import { renderWiring, type WiringOptions } from '../../../../src/report/wiring/renderWiring.ts';
import { schemeStarter } from '../../../../src/report/wiring/schemeStarter.ts';
import type { SymbolSet } from '../../../../src/report/wiring/symbolSet.ts';
import type { SchemeName, StarterData } from '../../../../src/scenario/scenario.ts';
import type { ControlCircuit } from '../../../../src/starter/control/controlCircuit.ts';
import { circuitOfStarter } from '../../../../src/starter/control/schemes.ts';
import { type ReadDrawing, readDrawing } from './readDrawing.ts';

export const SCHEMES: readonly SchemeName[] = [
  'throughStop',
  'direct',
  'antiPlugging',
  'plugStop',
  'plugStopBoth',
  'jog',
];
export const SYMBOL_SETS: readonly SymbolSet[] = ['iec', 'us'];

/** What a control circuit can have beside its scheme. */
const PARTS = ['memoryRelay', 'readyRelay', 'changeoverTimer', 'category1', 'lockout'] as const;

export interface Variant {
  readonly name: string;
  readonly starter: StarterData;
  readonly circuit: ControlCircuit;
  readonly options: WiringOptions;
}

/**
 * Every scheme with every combination of the parts that feed the commands. Memory relay and lockout have coils of their own: they
 * come and go so that each meets every other part and its absence.
 */
export function allVariants(symbols: SymbolSet): readonly Variant[] {
  const combinations = [0, 1, 2, 3, 4, 5, 6, 7].map((bits) => {
    const [ready, timer, category1] = [1, 2, 4].map((bit) => (bits & bit) !== 0) as [
      boolean,
      boolean,
      boolean,
    ];
    const has: Readonly<Record<(typeof PARTS)[number], boolean>> = {
      memoryRelay: ready === timer,
      readyRelay: ready,
      changeoverTimer: timer,
      category1,
      lockout: timer === category1,
    };
    return PARTS.filter((part) => has[part]);
  });
  return SCHEMES.flatMap((scheme) => combinations.map((parts) => variant(scheme, symbols, parts)));
}

/** Every scheme plain and with everything, and with line resistors. */
export function someVariants(symbols: SymbolSet): readonly Variant[] {
  return SCHEMES.flatMap((scheme) => [
    variant(scheme, symbols, []),
    variant(scheme, symbols, PARTS, {
      lineResistors: { resistance: 1, closingTime: 0.02, openingTime: 0.01, bypassAfter: null },
      plugConnection: 'star',
    }),
  ]);
}

export function variant(
  scheme: SchemeName,
  symbols: SymbolSet,
  parts: readonly (typeof PARTS)[number][],
  more: Partial<StarterData> = {},
): Variant {
  const has = (part: (typeof PARTS)[number]) => parts.includes(part);
  const base = schemeStarter(scheme);
  const starter: StarterData = {
    ...base,
    ...(has('lockout')
      ? { zeroSpeedSwitch: { pickUpSpeed: 10, dropOutSpeed: 5, delay: 0, lockout: true } }
      : {}),
    control: {
      ...base.control!,
      memoryRelay: has('memoryRelay'),
      readyRelay: has('readyRelay'),
      changeoverTimer: has('changeoverTimer') ? 0.05 : 0,
      emergencyStop: has('category1') ? { category: 1, limit: 4 } : { category: 0 },
      scanTime: parts.length === PARTS.length ? 0.01 : 0,
    },
    ...more,
  };
  return {
    name: [scheme, symbols, ...parts, ...Object.keys(more)].join(' '),
    starter,
    circuit: circuitOfStarter(starter)!,
    options: { starter, symbols, title: 'Roller table' },
  };
}

const drawings = new Map<string, ReadDrawing>();

/** What the drawing of a variant shows; drawn once for all tests. */
export function drawingOf({ name, circuit, options }: Variant): ReadDrawing {
  const known = drawings.get(name);
  if (known !== undefined) return known;
  const drawing = readDrawing(renderWiring(circuit, options));
  drawings.set(name, drawing);
  return drawing;
}
