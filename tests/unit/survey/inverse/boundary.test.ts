import { describe, expect, it } from 'vitest';
import { boundary, onset } from '../../../../src/survey/inverse/boundary.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const WIDTH = 1e-4;
const upTo = (limit: number) => (value: number) => ({
  passes: value <= limit,
  failing: value <= limit ? [] : ['too much'],
});

describe('the last value that passes', () => {
  it('is found to the width asked for, going up', () => {
    const found = boundary({ from: 1, to: 1000, steps: 6, width: WIDTH }, upTo(137));
    expect(found.kind).toBe('found');
    expectWithin(found.value!, 137, { relative: WIDTH }, 'boundary');
    expect(found.value).toBeLessThanOrEqual(137);
    expect(found.beyond).toBeGreaterThan(137);
    expect(found.binding).toEqual(['too much']);
  });

  it('is found going down', () => {
    const least = (value: number) => ({ passes: value >= 0.02, failing: value >= 0.02 ? [] : ['arc'] });
    const found = boundary({ from: 1, to: 1e-4, steps: 8, width: WIDTH }, least);
    expectWithin(found.value!, 0.02, { relative: WIDTH }, 'boundary');
    expect(found.value).toBeGreaterThanOrEqual(0.02);
    expect(found.binding).toEqual(['arc']);
  });

  it('is that of the first range that passes where the beginning fails', () => {
    const between = (value: number) => ({
      passes: value >= 5 && value <= 80,
      failing: [value < 5 ? 'low' : 'high'],
    });
    const found = boundary({ from: 1, to: 1000, steps: 12, width: WIDTH }, between);
    expectWithin(found.value!, 80, { relative: WIDTH }, 'boundary');
    expect(found.binding).toEqual(['high']);
  });

  it('says when everything and when nothing passes, and what fails first', () => {
    expect(boundary({ from: 1, to: 10, steps: 3, width: WIDTH }, upTo(99))).toMatchObject({
      kind: 'everything',
      value: 10,
      beyond: null,
    });
    expect(boundary({ from: 1, to: 10, steps: 3, width: WIDTH }, upTo(0.5))).toMatchObject({
      kind: 'nothing',
      value: null,
      beyond: 1,
      binding: ['too much'],
    });
  });

  it('asks for each value once and counts the trials', () => {
    const asked: number[] = [];
    const found = boundary({ from: 1, to: 1000, steps: 6, width: 0.01 }, (value) => {
      asked.push(value);
      return upTo(137)(value);
    });
    expect(new Set(asked).size).toBe(asked.length);
    expect(found.trials).toBe(asked.length);
    // The scan passes 1, 3.2, 10, 32, 100 and fails at 316; a ratio of 3.16 is halved to 1 % in about seven steps.
    expect(asked.length).toBeLessThan(15);
  });
});

describe('the first value that passes', () => {
  const from = (limit: number) => (value: number) => ({
    passes: value >= limit,
    failing: value >= limit ? [] : ['too little'],
  });

  it('is found to the width asked for, and nothing far beyond it is tried', () => {
    const asked: number[] = [];
    const found = onset({ from: 1, to: 1e6, steps: 6, width: WIDTH }, (value) => {
      asked.push(value);
      return from(40)(value);
    });
    expect(found.kind).toBe('found');
    expectWithin(found.value!, 40, { relative: WIDTH }, 'onset');
    expect(found.value).toBeGreaterThanOrEqual(40);
    expect(found.beyond).toBeLessThan(40);
    expect(found.binding).toEqual(['too little']);
    expect(Math.max(...asked)).toBeLessThanOrEqual(100.0001);
    expect(found.trials).toBe(asked.length);
  });

  it('says when the first tried passes already and when none does', () => {
    expect(onset({ from: 1, to: 10, steps: 2, width: WIDTH }, from(0.5))).toMatchObject({
      kind: 'everything',
      value: 1,
      trials: 1,
    });
    expect(onset({ from: 1, to: 10, steps: 2, width: WIDTH }, from(11))).toMatchObject({
      kind: 'nothing',
      value: null,
      beyond: 10,
      binding: ['too little'],
    });
  });
});
