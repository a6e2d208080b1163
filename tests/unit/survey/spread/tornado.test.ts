import { describe, expect, it } from 'vitest';
import { tornadoOf } from '../../../../src/survey/spread/tornado.ts';
import { expectWithin } from '../../../support/tolerance.ts';
import { computedRows, syntheticSurvey, uniform } from './syntheticSurvey.ts';

const survey = syntheticSurvey({ kind: 'sensitivity', samples: 4, sequence: 'quasi' }, [
  uniform('supply.angle', 0, 10),
  uniform('load.inertia', 0, 100),
  uniform('starter.closingTime', -1, 1),
]);
const rows = computedRows(survey, ([x, y, z]) => x! - 2 * y! + 500 * z! * z!);

describe('a tornado', () => {
  it('has each field at 10 % and 90 %, the metric there, and the field that moves it most first', () => {
    const [tornado] = tornadoOf(survey, () => rows);
    // At the medians: 5 − 100 + 0.
    expectWithin(tornado!.base, -95, { relative: 1e-12 }, 'base');
    const [first, second, third] = tornado!.bars;
    // Both ends of the parabola are 500·0.8² = 320 above its middle, which is the base.
    expect(first!.field).toBe('starter.closingTime');
    expectWithin(first!.swing, 320, { relative: 1e-12 }, 'swing');
    expectWithin(first!.atTo, 225, { relative: 1e-12 }, 'at the end');
    expect(second!.field).toBe('load.inertia');
    expectWithin(second!.from, 10, { relative: 1e-12 }, 'from');
    expectWithin(second!.to, 90, { relative: 1e-12 }, 'to');
    expectWithin(second!.atFrom, -15, { relative: 1e-12 }, 'at from');
    expectWithin(second!.atTo, -175, { relative: 1e-12 }, 'at to');
    expectWithin(third!.swing, 8, { relative: 1e-12 }, 'swing');
  });

  it('puts fields last whose effect is not known, and reads no further than its own runs', () => {
    let read = 0;
    const source = function* () {
      for (const row of rows.filter(({ run }) => run !== 3)) {
        read++;
        yield row.run === 6 ? { ...row, status: 'failed' as const, reason: 'x' } : row;
      }
    };
    const [tornado] = tornadoOf(survey, source);
    expect(tornado!.bars.map(({ field }) => field)).toEqual([
      'supply.angle',
      'load.inertia',
      'starter.closingTime',
    ]);
    expect(tornado!.bars[1]).toMatchObject({ from: null, atFrom: null, swing: null });
    expect(tornado!.bars[2]).toMatchObject({ atTo: null, swing: null });
    expect(read).toBe(7);
  });

  it('does without its middle, and is for sensitivity surveys alone', () => {
    const [tornado] = tornadoOf(survey, () => rows.slice(1));
    expect(tornado!.base).toBeNull();
    expectWithin(tornado!.bars[0]!.swing, 160, { relative: 1e-12 }, 'swing');
    expect(tornadoOf(syntheticSurvey({ kind: 'sweep' }), () => rows)).toEqual([]);
  });
});
