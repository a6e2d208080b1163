import type { Bench } from './bench.ts';
import { contactFaultTests } from './contactFaults.ts';
import { lineFaultTests } from './lineFaults.ts';
import { switchFaultTests } from './switchFaults.ts';
import type { CommissioningTest } from './test.ts';
import { weldingTests } from './welding.ts';

/** Each device fault, with what this scheme makes of it. */
export function faultTests(bench: Bench): readonly CommissioningTest[] {
  return [
    ...weldingTests(bench),
    ...switchFaultTests(bench),
    ...contactFaultTests(bench),
    ...lineFaultTests(bench),
  ];
}
