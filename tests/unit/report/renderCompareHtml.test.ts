import { describe, expect, it } from 'vitest';
import { type ComparedJudgement, renderCompareHtml } from '../../../src/report/renderCompareHtml.ts';
import type { Origin } from '../../../src/scenario/origin.ts';
import { criterion, fakeJudgement, fakeJudgementOf } from './fakeJudgement.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

const origin = (path: string, value: string): Origin => ({ path, value, origin: 'given' });

const side = (name: string, origins: readonly Origin[]): ComparedJudgement => ({
  name,
  judged: fakeJudgement(),
  origins,
});

const page = (a: ComparedJudgement, b: ComparedJudgement) =>
  renderCompareHtml(a, b, { units: 'SI', version: '1' })
    .replace(/<style>.*?<\/style>/gsu, '')
    .replace(/<[^>]+>/gu, ' ')
    .replace(/[ \n]+/gu, ' ');

const a = side('a.yaml', [origin('duty.operationsPerHour', '30'), origin('supply.frequency', '60 Hz')]);
const b = side('b.yaml', [
  origin('duty.operationsPerHour', '40'),
  origin('supply.frequency', '60 Hz'),
  origin('limits.stopTime', '1 s'),
]);

/** The second run with a stop that takes other times as long, and another outcome. */
function changed(): ComparedJudgement {
  const { result, suitability } = b.judged;
  const { stopTimeFromParting } = result.metrics;
  const metrics = {
    ...result.metrics,
    // 1.25 of the first one's 0.48 s
    stopTimeFromParting: { ...stopTimeFromParting, value: 0.6 },
    reversalTime: { ...result.metrics.reversalTime, value: null },
  };
  const criteria = [criterion('stopTime', { value: 3, margin: -0.5, outcome: 'fail', unit: 's' })];
  return {
    ...b,
    judged: { ...b.judged, result: { ...result, metrics }, suitability: { ...suitability, criteria } },
  };
}

describe('two judgements side by side', () => {
  it('show exactly the inputs that differ', () => {
    const text = page(a, b);
    expect(text).toContain('duty.operationsPerHour 30 40');
    expect(text).toContain('limits.stopTime not stated 1 s');
    expect(text).not.toContain('supply.frequency');
    expect(page(a, a)).toContain('Both scenarios state the same.');
  });

  it('show both verdicts with their reservations', () => {
    const sentence =
      'Plugging is not suitable by these criteria: cage temperature exceeds its limit by 12 %.';
    expect(page(a, b).split(sentence).length - 1).toBe(2);
    expect(page(a, b)).toContain('One closing angle.');
  });

  it('show criteria of both with their outcomes; one that only one has is not judged in the other', () => {
    const text = page(a, changed());
    expect(text).toContain('Name of stopTime 1 at most 2 pass 3.00 s at most 2.00 s fail');
    expect(text).toContain('Name of stopAngle 0.159 rev at most 0.318 rev pass not judged');
  });

  it('show the difference of each figure with its share: 0.6 s after 0.48 s is 25 % more', () => {
    const text = page(a, changed());
    expect(text).toContain('0.480 s 0.600 s +0.120 s (+25.0 %)');
    expect(page(a, b)).toContain('0.480 s 0.480 s none');
  });

  it.each(HOSTILE_TEXTS)('write hostile names as text: %#', (hostile) => {
    const html = renderCompareHtml({ ...a, name: hostile }, b, { units: 'us', version: '1' });
    expect(html).not.toMatch(/<script|<img|<!-- |onmouseover='/u);
  });

  it.each(HOSTILE_TEXTS)('write hostile titles, inputs and remarks as text: %#', (hostile) => {
    const other = { ...b, judged: fakeJudgementOf(hostile), origins: [origin('title', hostile)] };
    const inputs = { ...a, origins: [origin('machine.note', hostile)] };
    const html = renderCompareHtml(inputs, other, { units: 'SI', version: '1' });
    expect(html).not.toMatch(/<script|<img|<!-- |onmouseover='/u);
    expect(html.match(/<style>/gu)?.length).toBe(1);
    for (const control of ['\u202E', '\u2066', '\u0000', '\u0007']) expect(html).not.toContain(control);
  });

  it('call the sides A and B in every table and explain the letters at the top', () => {
    const text = page(a, b);
    expect(text).toContain('A: Tilting table of a foundry, 37 kW a.yaml');
    expect(text).toContain('B: Tilting table of a foundry, 37 kW b.yaml');
    expect(text).toContain('Input A B duty.operationsPerHour');
    expect(text).toContain('Criterion A: value A: outcome B: value B: outcome');
  });

  it('tell ten times and more as a multiple, and an angle without a share of it', () => {
    const given = (side: ComparedJudgement, time: number, angle: number): ComparedJudgement => {
      const { result } = side.judged;
      const { stopTimeFromParting, supplyAngleAtTouch } = result.metrics;
      const metrics = {
        ...result.metrics,
        stopTimeFromParting: { ...stopTimeFromParting, value: time },
        supplyAngleAtTouch: { ...supplyAngleAtTouch, unit: 'rad', value: angle },
      };
      return { ...side, judged: { ...side.judged, result: { ...result, metrics } } };
    };
    const text = page(given(a, 0.48, 1), given(b, 4.8, 2));
    expect(text).toContain('0.480 s 4.80 s +4.32 s (10.0 times A)');
    // One radian is 57.3 degrees.
    expect(text).toMatch(/Supply angle at touch 57\.3° 115° \+57\.3° (?!\()/u);
  });
});
