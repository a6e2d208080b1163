import { expect, it } from 'vitest';
import { buffersOf } from '../../../src/page/worker/buffersOf.ts';

it('every buffer of nested data is found once, whatever shares it', () => {
  const shared = new Float64Array(3);
  const other = new Float64Array(2);
  const data = {
    a: shared,
    panels: [{ series: [{ x: shared, y: other }] }],
    text: 'x',
    numbers: [1, 2],
    none: null,
    part: shared.subarray(1),
  };
  expect(new Set(buffersOf(data))).toEqual(new Set([shared.buffer, other.buffer]));
  expect(buffersOf(data)).toHaveLength(2);
});

it('data without arrays has no buffers', () => {
  expect(buffersOf({ a: [1, 'b', null], c: undefined })).toEqual([]);
});
