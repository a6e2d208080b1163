/**
 * Krause 50 hp machine at no load, plugged with 50 ms between parting and touch, poles clearing one by one: near the worst closing
 * angle a first torque peak about −17 times and a crest current about 18 times those at rated output, about −4.3 times at
 * the best angle (computed with an independent phase-variable model; two digits).
 */
import { describe, it } from 'vitest';
import { simulate } from '../../src/measure/simulate.ts';
import { publishedSource } from '../support/published.ts';
import { scenarioOf } from '../support/scenarios.ts';
import { KRAUSE } from '../support/textbookMachines.ts';

const { compare, listedInGuide } = publishedSource(
  'worstClosingAngle',
  'Krause’s 50 hp machine at no load, plugged with 50 ms between parting and touch, poles clearing one ' +
    'by one, in an independent model in phase variables; its figures have two digits and were taken near ' +
    'the extremes, ours are the extremes over 24 angles.',
  'computed independently',
);

describe('plugging after 50 ms over the closing angle', () => {
  it('has the computed worst and best multiples', () => {
    const torques: number[] = [];
    const currents: number[] = [];
    // δ turns twice as fast as the supply angle: half a turn covers every angle, 7.5° of φ are 15° of δ.
    for (let k = 0; k < 24; k++) {
      const { metrics } = simulate(
        scenarioOf(KRAUSE.hp50, {
          supply: { angle: (k * Math.PI) / 24 },
          initial: 'runningForward',
          starter: { poles: 'arcing', changeoverDelay: 0.05 },
          actions: [{ at: 0, do: 'startReverse' }],
          solver: { endTime: 0.15, relativeTolerance: 1e-6 },
        }),
      );
      torques.push(metrics.plugMinimumTorque.multiple!.value);
      currents.push(metrics.plugPeakCurrent.multiple!.value);
    }
    // "About", near the extremes and not at them: 5 %. A millisecond more or less of decay is 0.6 %.
    const about = { relative: 0.05 };
    const torque = 'most negative torque, multiple of that at rated output';
    compare(Math.min(...torques), -17, about, `${torque}, worst closing angle`, '');
    compare(
      Math.max(...currents),
      18,
      about,
      'peak current, multiple of the crest at rated output, worst closing angle',
      '',
    );
    compare(Math.max(...torques), -4.3, about, `${torque}, best closing angle`, '');
  });
});

listedInGuide();
