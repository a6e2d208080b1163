import { expect, it } from 'vitest';
import type { ControlData } from '../../src/scenario/starterData.ts';
import type { ControlCircuit } from '../../src/starter/control/controlCircuit.ts';
import { controlCircuit } from '../../src/starter/control/schemes.ts';
import { type BenchAction, type BenchSetUp, type Contactors, controlBench } from './controlBench.ts';

/** What is done (all at one instant), which contactor coils are then energised, and why. */
export type TruthRow = readonly [
  BenchAction | readonly BenchAction[],
  /** Coils; the armatures are where their coils want them, or where `armatures` says. */
  Contactors | { readonly coils: Contactors; readonly armatures: Contactors },
  string,
];

/** A sequence of actions on one circuit, from rest. */
export interface TruthTable {
  /** The law that the rows follow, as a sentence. */
  readonly law: string;
  readonly control: Partial<ControlData> & Pick<ControlData, 'scheme'>;
  readonly lockout?: true;
  readonly setUp?: BenchSetUp;
  /** The outcome is that of a race: only with the armatures in circuit order. */
  readonly race?: true;
  readonly rows: readonly TruthRow[];
}

/** A wired control without any option. */
export const PLAIN_CONTROL: Omit<ControlData, 'scheme'> = {
  memoryRelay: false,
  readyRelay: false,
  emergencyStop: { category: 0 },
  changeoverTimer: 0,
  mechanicalInterlock: true,
  relayTime: 0.01,
  scanTime: 0,
  coilVoltage: null,
  overload: { setting: 10, tripClass: '10', start: 'cold', memory: 'kept' },
};

/** One test per table: every row as written, whichever armature is the quicker one, and both contactors in only where a row says so. */
export function checkTables(tables: readonly TruthTable[]): void {
  it.each(tables.map((table) => [titleOf(table), table] as const))('%s', (...args) => {
    const table = args[1];
    const circuit = controlCircuit({ ...PLAIN_CONTROL, ...table.control }, table.lockout === true);
    for (const first of table.race ? ORDERS.slice(0, 1) : ORDERS) {
      const { seen, wanted } = readRows(table, circuit, first);
      expect(seen, first).toEqual(wanted);
    }
  });
}

const ORDERS = ['firstInCircuit', 'lastInCircuit'] as const;

/** The rows of a table as sentences: as a circuit makes them come out, and as they are written. */
export function readRows(
  { rows, setUp }: TruthTable,
  circuit: ControlCircuit,
  first: (typeof ORDERS)[number],
): { readonly seen: readonly string[]; readonly wanted: readonly string[] } {
  const bench = controlBench(circuit, { ...setUp, first });
  const seen: string[] = [];
  const wanted: string[] = [];
  for (const [actions, outcome, reason] of rows) {
    const list: readonly BenchAction[] = typeof actions === 'string' ? [actions] : actions;
    const sentence = (coils: Contactors, armatures: Contactors, shorted: boolean) =>
      `${list.join(' and ')} → coils: ${coils}, in: ${armatures}${shorted ? ', short circuit' : ''} (${reason})`;
    bench.act(...list);
    seen.push(sentence(bench.coils(), bench.armatures(), bench.bothWereIn()));
    const { coils, armatures } =
      typeof outcome === 'string' ? { coils: outcome, armatures: outcome } : outcome;
    wanted.push(sentence(coils, armatures, armatures === 'both'));
  }
  return { seen, wanted };
}

function titleOf({ control, lockout, law }: TruthTable): string {
  const options: string[] = [];
  if (control.memoryRelay) options.push('memory relay');
  if (control.readyRelay) options.push('ready relay');
  if (lockout) options.push('lockout');
  return `${control.scheme}${options.length > 0 ? ` with ${options.join(' and ')}` : ''}: ${law}`;
}
