import { describe, expect, it } from 'vitest';
import { drawnAxis } from '../../../src/report/svgAxis.ts';

const labels = (range: readonly [number, number], domain: readonly [number, number]) =>
  drawnAxis({ label: '', domain, scale: 'log' }, range, 0)
    .ticks.filter(({ text }) => text !== '')
    .map(({ text }) => text);

describe('a logarithmic axis', () => {
  it('gives every decade the same length', () => {
    const { at } = drawnAxis({ label: '', domain: [0.1, 100], scale: 'log' }, [0, 300], 0);
    expect([0.1, 1, 10, 100].map((value) => Math.round(at(value)))).toEqual([0, 100, 200, 300]);
  });

  it('has a rule at every digit inside the domain', () => {
    const { ticks } = drawnAxis({ label: '', domain: [0.25, 3], scale: 'log' }, [0, 300], 0);
    expect(ticks.map(({ value }) => value)).toEqual([0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1, 2, 3]);
  });

  it('labels decades, and 2 and 5 too where a decade is wide', () => {
    expect(labels([0, 300], [0.1, 100])).toEqual(['0.1', '1', '10', '100']);
    expect(labels([0, 300], [1, 100])).toEqual(['1', '2', '5', '10', '20', '50', '100']);
  });

  it('leaves decades without a label where they are narrow', () => {
    // 15 px a decade, 30 px a label
    expect(labels([0, 60], [0.01, 100])).toEqual(['0.01', '1', '100']);
  });
});

describe('a logarithmic axis that cannot be drawn', () => {
  it.each([
    [0, 10],
    [-1, 10],
    [5, 5],
    [1, Number.POSITIVE_INFINITY],
  ])('from %d to %d is refused', (low, high) => {
    const axis = { label: '', domain: [low, high] as const, scale: 'log' as const };
    expect(() => drawnAxis(axis, [0, 100], 5)).toThrow('a logarithmic axis cannot show');
  });
});

describe('a linear axis', () => {
  it('labels every tick', () => {
    const { ticks } = drawnAxis({ label: '', domain: [0, 10] }, [0, 100], 5);
    expect(ticks.map(({ text }) => text)).toEqual(['0', '2', '4', '6', '8', '10']);
  });
});
