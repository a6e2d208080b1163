/**
 * Motor and load on an elastic coupling. Numbers computed with DOP853 at 1e-10 in two formulations (not published values): 50 hp
 * machine of the Krause table, instant exchange from no load at φ = 0, motor 1.662 and load 3.324 kg·m², 2·10⁵ N·m/rad.
 */
import { describe, expect, it } from 'vitest';
import { simulate } from '../../src/measure/simulate.ts';
import type { CouplingData } from '../../src/scenario/scenario.ts';
import { publishedSource } from '../support/published.ts';
import { exchangeAtOnce } from '../support/scenarios.ts';
import { KRAUSE } from '../support/textbookMachines.ts';

const { compare, listedInGuide } = publishedSource(
  'twoMassShaft',
  'Krause’s 50 hp machine, two phases exchanged at no load, on a coupling of 2·10⁵ N·m/rad with a load ' +
    'of twice its inertia; integrated with a general-purpose numerical library (eighth-order ' +
    'Runge–Kutta, 1e-10) in two formulations.',
  'computed independently',
);

const LOAD_INERTIA = 3.324;
/** How the tables of the guide name the coupling of most of these tests. */
const DAMPED = 'damping 10 N·m·s/rad';
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
    compare(
      metrics.torsionalFrequency.value,
      67.618,
      { absolute: 5.1e-4 },
      'natural frequency of the shaft',
      'Hz',
    );
  });

  it('twists the coupling to more than the air-gap torque', () => {
    const { plugCouplingTorque: peak, plugMinimumTorque: airGap } = metrics;
    // Samples every 25 µs with a parabola in the table: good to 1e-5.
    compare(peak.value, -5981.68, { relative: 1e-5 }, `torque of the coupling, peak, ${DAMPED}`, 'N·m');
    compare(
      peak.time! * 1000,
      25.51,
      { absolute: 6e-3 },
      `time of that peak after the exchange, ${DAMPED} (to 0.01 ms)`,
      'ms',
    );
    compare(airGap.value, -4867.06, { relative: 1e-5 }, `air-gap torque, peak, ${DAMPED}`, 'N·m');
    compare(
      airGap.time! * 1000,
      6.511,
      { absolute: 1e-3 },
      `time of that peak after the exchange, ${DAMPED}`,
      'ms',
    );
    const back = Math.max(...trajectory.sample(0.032, 0.0342, 441).couplingTorque);
    compare(back, 5465.75, { relative: 2e-5 }, `torque of the coupling, first swing back, ${DAMPED}`, 'N·m');
  });

  it('stops the motor a little earlier than a rigid shaft', () => {
    const what = 'time until the motor stands';
    const last = { absolute: 1e-5 };
    compare(metrics.stopTimeFromTouch.value, 2.27877, last, `${what}, ${DAMPED}`, 's');
    compare(exchange(2.4).metrics.stopTimeFromTouch.value, 2.28019, last, `${what}, rigid shaft`, 's');
    expect(ledger.residual).toBeLessThan(1e-8);
    expect(ledger.couplingLoss).toBeGreaterThan(100);
  });

  it('grows without damping: the peak of the first 100 ms is higher', () => {
    const { plugCouplingTorque: peak } = exchange(0.1, { ...stiff, damping: 0 }).metrics;
    const undamped = 'undamped, first 100 ms';
    compare(peak.value, -6858.06, { relative: 1e-5 }, `torque of the coupling, peak, ${undamped}`, 'N·m');
    compare(
      peak.time! * 1000,
      55.55,
      { absolute: 6e-3 },
      `time of that peak after the exchange, ${undamped} (to 0.01 ms)`,
      'ms',
    );
  });
});

listedInGuide();
