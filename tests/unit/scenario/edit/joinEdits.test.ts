import { expect, it } from 'vitest';
import { type Edit, joinEdits } from '../../../../src/scenario/edit/edit.ts';

const inertia = (value: number): Edit => ({ kind: 'adjust', key: 'loadInertia', value });
const angle = (value: number): Edit => ({ kind: 'adjust', key: 'closingAngle', value });
const press = (at: number): Edit => ({ kind: 'button', at, do: 'press', button: 'stop' });

it('of several turns of one quantity the last is left, in its place', () => {
  expect(joinEdits([inertia(1), angle(2), inertia(3)])).toEqual([angle(2), inertia(3)]);
});

it('hands on buttons are never joined', () => {
  expect(joinEdits([press(1), press(1), press(2)])).toHaveLength(3);
});

it('options of the control are joined by their name, faults and end times as wholes', () => {
  const option = (key: 'memoryRelay' | 'readyRelay', value: boolean): Edit => ({
    kind: 'control',
    option: { key, value },
  });
  const edits: Edit[] = [
    option('memoryRelay', true),
    option('readyRelay', true),
    { kind: 'faults', faults: [] },
    option('memoryRelay', false),
    { kind: 'endTime', value: 2 },
    { kind: 'faults', faults: [{ kind: 'overloadNeverTrips' }] },
    { kind: 'endTime', value: 'auto' },
  ];
  expect(joinEdits(edits)).toEqual([
    option('readyRelay', true),
    option('memoryRelay', false),
    { kind: 'faults', faults: [{ kind: 'overloadNeverTrips' }] },
    { kind: 'endTime', value: 'auto' },
  ]);
});
