import { describe, expect, it } from 'vitest';
import { benchScenario, type ControlOptions, trialBench } from './commissioningBenches.ts';

const plugStop = (limit: number): ControlOptions => ({
  scheme: 'plugStop',
  memoryRelay: true,
  readyRelay: true,
  emergencyStop: { category: 1, limit },
});
/** Braking of this drive takes longer than the one and less than the other, s. */
const [SHORT, LONG] = [0.1, 3];
const RUNNING = 'emergencyStop.forward';

/** The row of an emergency stop of category 1 while the machine runs. */
function stopRow(limit: number) {
  const row = trialBench(benchScenario(plugStop(limit))).row(RUNNING);
  const release = row.test.actions.find(
    ({ button, do: what }) => button === 'emergencyStop' && what === 'release',
  )!;
  return {
    ...row,
    release: release.at - row.test.mark,
    words: row.test.requirements.map((one) => one.words),
  };
}

const ITEM = /contactor (in|out)$/u;

describe('an emergency stop of category 1', () => {
  it('has both contactors out when the braking one is out, not in the gap between the two', () => {
    const { shows } = stopRow(LONG);
    const moves = shows!.sequence.items.filter(({ words }) => ITEM.test(words));
    expect(moves.map(({ words }) => words)).toEqual([
      'forward contactor out',
      'reverse contactor in',
      'reverse contactor out',
    ]);
    expect(shows!.durations[0]).toEqual({ words: 'until both contactors are out', value: moves[2]!.after });
  });

  it.each([LONG, SHORT])('is released after standstill and limit of that very run, limit %d s', (limit) => {
    const { shows, verdict, release, test } = stopRow(limit);
    const standstill = shows!.durations.find(({ words }) => words === 'to standstill')!.value!;
    expect(verdict).toEqual({ kind: 'agrees' });
    expect(release).toBeGreaterThan(standstill);
    expect(release).toBeGreaterThan(limit);
    expect(shows!.readings.tachometer.find(({ words }) => words === 'at its release')?.speed).toBeCloseTo(
      0,
      3,
    );
    expect(test.hands).toMatch(/Release it when the machine stands and the time limit has run out\.$/u);
  });

  it('asks the switch to end the braking where the limit is long enough, and the limit where it is not', () => {
    const bySwitch = 'the zero-speed switch ends the braking before the time limit';
    const byLimit = 'both coils are dead when the time limit has run out';
    const quick = stopRow(LONG);
    expect(quick.words).toContain(bySwitch);
    expect(quick.words).not.toContain(byLimit);
    const slow = stopRow(SHORT);
    expect(slow.words).toContain(byLimit);
    expect(slow.words).not.toContain(bySwitch);
    const items = slow.shows!.sequence.items.map(({ words }) => words);
    const order = [
      'reverse contactor in',
      'braking time limit over',
      'reverse contactor out',
      'zero-speed switch opens',
    ];
    expect(items.filter((one) => order.includes(one))).toEqual(order);
  });

  it('does not agree where the limit, not the switch, ends the braking', () => {
    const { rowBy } = trialBench(benchScenario(plugStop(LONG)));
    const stuck = { kind: 'zeroSpeedSwitch', mode: 'stuckClosed' } as const;
    expect(rowBy(RUNNING, { faults: [stuck] }).verdict).toMatchObject({
      kind: 'differs',
      unmet: expect.arrayContaining(['the zero-speed switch ends the braking before the time limit']),
    });
  });

  it('of a machine that nothing brings to rest is released while it turns, and the row says so', () => {
    const scenario = benchScenario(plugStop(SHORT));
    const free = { ...scenario, load: { ...scenario.load, torques: [] } };
    const { test, verdict, shows } = trialBench(free).row(RUNNING);
    expect(test.hands).toMatch(/Release it when the time limit has run out; the machine still turns\.$/u);
    expect(shows?.end.kind).toBe('coasts');
    expect(verdict).toEqual({ kind: 'differs', unmet: ['comes to rest, both contactors out'] });
  });
});

describe('a hold-in contact that is stuck closed', () => {
  it.each([true, false])(
    'starts the machine by itself, ready relay %s, and stop only interrupts',
    (readyRelay) => {
      const { row } = trialBench(benchScenario({ scheme: 'throughStop', readyRelay }));
      for (const direction of ['forward', 'reverse'] as const) {
        const { test, verdict, dangers, shows } = row(`fault.holdInClosed.${direction}`);
        expect(test.actions.map(({ button }) => button)).not.toContain(direction);
        expect(verdict).toEqual({ kind: 'agrees' });
        expect(dangers.join()).toMatch(/starts by itself when .*stop acts only while it is held/u);
        expect(shows?.end).toMatchObject({ kind: 'connected', contactor: direction });
      }
    },
  );
});

describe('a clamp meter', () => {
  it('has no reading of an operation whose current ends within one window', () => {
    const { row } = trialBench(benchScenario(plugStop(LONG)));
    for (const id of ['supply.running', 'supply.plugging', 'overload.running', 'overload.plugging'])
      expect(row(id).shows!.readings).toMatchObject({ operation: null, cutOff: true });
    for (const id of ['stop.forward', 'start.forward', RUNNING]) {
      expect(row(id).shows!.readings.cutOff).toBe(false);
      expect(row(id).shows!.readings.operation).not.toBe(null);
    }
    // Nothing flows at all: that is a reading of 0.
    expect(row('stop.atRest').shows!.readings).toMatchObject({
      operation: { hall: { value: 0 } },
      cutOff: false,
    });
  });
});
