import type { ControlData, Scenario, StarterData, StarterFault } from '../../../src/scenario/scenario.ts';
import {
  type CommissioningRow,
  commissioningTests,
  rowOf,
  runnableBench,
} from '../../../src/survey/commissioning/commissioningSheet.ts';
import type { CommissioningTest } from '../../../src/survey/commissioning/test.ts';
import { scenarioOf } from '../../support/scenarios.ts';
import { KRAUSE } from '../../support/textbookMachines.ts';

/** Contactors with arcs and a zero-speed switch that lets a small drive stop without swinging back. */
const STARTER: Partial<StarterData> = {
  closingTime: 0.018,
  openingTime: 0.009,
  changeoverDelay: 0,
  poles: 'arcing',
  zeroSpeedSwitch: { dropOutSpeed: 8, pickUpSpeed: 16, delay: 0.003 },
};

/** How a control differs from a plain wired one. */
export type ControlOptions = Partial<ControlData> & Pick<ControlData, 'scheme'>;

/** The 3 hp machine of the textbook on a load of dry friction, with a control circuit. */
export function benchScenario(options: ControlOptions, inertia = 0.06): Scenario {
  const control: ControlData = {
    memoryRelay: false,
    readyRelay: false,
    emergencyStop: { category: 0 },
    changeoverTimer: 0,
    mechanicalInterlock: true,
    relayTime: 0.01,
    scanTime: 0,
    coilVoltage: null,
    overload: { setting: 8, tripClass: '10', start: 'cold', memory: 'kept' },
    ...options,
  };
  return scenarioOf(KRAUSE.hp3, {
    inertia,
    load: { torques: [{ kind: 'friction', torque: 5, breakaway: 7 }] },
    starter: { ...STARTER, control },
    solver: { relativeTolerance: 1e-4 },
  });
}

/** The forms in which nothing starts by itself. */
export const IMPROVED: readonly ControlOptions[] = [
  { scheme: 'throughStop', readyRelay: true },
  { scheme: 'direct', readyRelay: true },
  { scheme: 'antiPlugging', readyRelay: true },
  { scheme: 'plugStop', memoryRelay: true, readyRelay: true },
  { scheme: 'plugStopBoth', memoryRelay: true, readyRelay: true },
  { scheme: 'jog', memoryRelay: true, readyRelay: true },
];

/** A bench on which single tests are run, as they are or with faults that nobody expects. */
export interface TrialBench {
  readonly tests: readonly CommissioningTest[];
  readonly row: (id: string) => CommissioningRow;
  readonly rowWith: (id: string, faults: readonly StarterFault[]) => CommissioningRow;
  /** The row judged by a run of something else than its test. */
  readonly rowBy: (id: string, change: Partial<CommissioningTest>, on?: Scenario) => CommissioningRow;
}

/** A bench for single tests. */
export function trialBench(scenario: Scenario): TrialBench {
  const bench = runnableBench(scenario, scenario.starter.control!);
  const tests = commissioningTests(bench);
  const named = (id: string): CommissioningTest => {
    const test = tests.find((one) => one.id === id);
    if (test === undefined) throw new Error(`no test "${id}" among ${tests.map((one) => one.id).join(', ')}`);
    return test;
  };
  const rowBy: TrialBench['rowBy'] = (id, change, on) => {
    const { run } = on === undefined ? bench : runnableBench(on, on.starter.control!);
    return rowOf(1, named(id), (test) => run({ ...test, ...change, id: `${id} ${JSON.stringify(change)}` }));
  };
  return {
    tests,
    row: (id) => rowOf(1, named(id), bench.run),
    rowWith: (id, faults) => rowBy(id, { faults, endTime: endOf(named(id), faults) }),
    rowBy,
  };
}

/** Nothing ends by itself behind a welded contactor. */
function endOf(test: CommissioningTest, faults: readonly StarterFault[]): number | 'auto' {
  if (!faults.some(({ kind }) => kind === 'weldedContactor')) return test.endTime;
  return Math.max(test.mark, ...test.actions.map(({ at }) => at)) + 0.5;
}
