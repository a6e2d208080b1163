/**
 * Motor and load on an elastic coupling. Numbers computed with DOP853 at 1e-10 in two formulations (not published values): 50 hp
 * machine of the Krause table, instant exchange from no load at φ = 0, motor 1.662 and load 3.324 kg·m², 2·10⁵ N·m/rad.
 */
import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/measure/simulate.ts';
import type { CouplingData } from '../../src/scenario/scenario.ts';
import { exchangeAtOnce } from '../support/scenarios.ts';
import { KRAUSE } from '../support/textbookMachines.ts';
import { expectWithin } from '../support/tolerance.ts';

const LOAD_INERTIA = 3.324;
const stiff: CouplingData = { stiffness: 2e5, damping: 10, backlash: 0 };
const exchange = (endTime: number, coupling?: CouplingData) =>
  simulate(
    exchangeAtOnce(KRAUSE.hp50, 0, endTime, {
      load: { inertia: LOAD_INERTIA, torques: [], ...(coupling && { coupling }) },
    }),
  );

describe('the exchange of two phases on a shaft that twists', () => {
  const { metrics, trajectory, ledger } = exchange(2.4, stiff);

  it('has the natural frequency of the two masses', () => {
    expectWithin(metrics.torsionalFrequency.value, 67.618, { absolute: 5.1e-4 }, 'Hz');
  });

  it('twists the coupling to more than the air-gap torque', () => {
    const { plugCouplingTorque: peak, plugMinimumTorque: airGap } = metrics;
    // Samples every 25 µs with a parabola in the table: good to 1e-5.
    expectWithin(peak.value, -5981.68, { relative: 1e-5 }, 'peak of the coupling');
    expectWithin(peak.time, 0.02551, { absolute: 6e-6 }, 'its time');
    expectWithin(airGap.value, -4867.06, { relative: 1e-5 }, 'air-gap torque');
    expectWithin(airGap.time, 0.006511, { absolute: 1e-6 }, 'its time');
    const back = Math.max(...trajectory.sample(0.032, 0.0342, 441).couplingTorque);
    expectWithin(back, 5465.75, { relative: 2e-5 }, 'first swing back');
  });

  it('stops the motor a little earlier than a rigid shaft', () => {
    expectWithin(metrics.stopTimeFromTouch.value, 2.27877, { absolute: 1e-5 }, 'motor at zero speed');
    expectWithin(exchange(2.4).metrics.stopTimeFromTouch.value, 2.28019, { absolute: 1e-5 }, 'rigid shaft');
    expect(ledger.residual).toBeLessThan(1e-8);
    expect(ledger.couplingLoss).toBeGreaterThan(100);
  });

  it('grows without damping: the peak of the first 100 ms is higher', () => {
    const { plugCouplingTorque: peak } = exchange(0.1, { ...stiff, damping: 0 }).metrics;
    expectWithin(peak.value, -6858.06, { relative: 1e-5 }, 'peak of the coupling');
    expectWithin(peak.time, 0.05555, { absolute: 6e-6 }, 'its time');
  });
});
