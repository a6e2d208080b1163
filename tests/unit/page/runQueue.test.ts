import { expect, it } from 'vitest';
import type { RunAnswer, RunOrder } from '../../../src/page/worker/protocol.ts';
import { runQueue } from '../../../src/page/worker/runQueue.ts';
import type { Edit } from '../../../src/scenario/edit/edit.ts';

const turn = (value: number): Edit => ({ kind: 'adjust', key: 'loadInertia', value });
const FIRST = { text: 'a', fileName: 'a.yaml', units: 'SI', hidden: null } as const;

/** A queue whose runs end when the test says so; what is run is the text with the values turned to. */
function bench() {
  const orders: Omit<RunOrder, 'detail'>[] = [];
  const ends: ((answer: RunAnswer) => void)[] = [];
  const fails: ((error: Error) => void)[] = [];
  const shown: string[] = [];
  const goneOn: boolean[] = [];
  const busy: boolean[] = [];
  const failures: unknown[] = [];
  const queue = runQueue(FIRST, {
    run: (order) => {
      orders.push(order);
      return new Promise((resolve, reject) => {
        ends.push(resolve);
        fails.push(reject);
      });
    },
    show: (answer, goesOn) => {
      shown.push(answer.text);
      goneOn.push(goesOn);
    },
    busy: (now) => busy.push(now),
    fail: (error) => failures.push(error),
  });
  const text = ({ text: base, edits }: Pick<RunOrder, 'text' | 'edits'>, kind: 'run' | 'refused') =>
    base +
    (kind === 'refused'
      ? ''
      : edits.map((edit) => (edit.kind === 'adjust' ? `+${edit.value}` : '')).join(''));
  const settle = () => new Promise((resolve) => setTimeout(resolve, 0));
  return {
    queue,
    orders,
    shown,
    goneOn,
    busy,
    failures,
    async end(index: number, kind: 'run' | 'refused' = 'run') {
      const answer = { kind, text: text(orders[index]!, kind), problems: [] } as unknown as RunAnswer;
      ends[index]!(answer);
      await settle();
    },
    async fail(index: number) {
      fails[index]!(new Error('lost'));
      await settle();
    },
  };
}

it('one run is under way at a time; of the turns that come meanwhile the last one goes next', async () => {
  const { queue, orders, shown, end } = bench();
  queue.edit([turn(1)]);
  queue.edit([turn(2)]);
  queue.edit([turn(3)]);
  expect(orders.map(({ edits }) => edits)).toEqual([[turn(1)]]);
  await end(0);
  expect(orders).toHaveLength(2);
  expect(orders[1]!.edits).toEqual([turn(3)]);
  await end(1);
  expect(shown).toHaveLength(2);
});

it('an answer about a text that another one has replaced is not shown', async () => {
  const { queue, orders, shown, end } = bench();
  queue.edit([turn(1)]);
  queue.open({ ...FIRST, text: 'b' });
  await end(0);
  expect(shown).toEqual([]);
  expect(orders[1]!.text).toBe('b');
  expect(orders[1]!.edits).toEqual([]);
  await end(1);
  expect(shown).toEqual(['b']);
});

it('a change that makes no scenario is told, and the next one starts from the text before it', async () => {
  const { queue, orders, end } = bench();
  queue.edit([turn(-1)]);
  await end(0, 'refused');
  queue.edit([turn(2)]);
  expect(orders[1]!.text).toBe('a');
});

it('a text that is no scenario stays the newest text', async () => {
  const { queue, orders, end } = bench();
  queue.open({ ...FIRST, text: 'broken' });
  await end(0, 'refused');
  queue.again({ units: 'us' });
  expect(orders[1]!.text).toBe('broken');
  expect(orders[1]!.units).toBe('us');
});

it('it is busy from the first order until nothing is left, and a failure ends nothing', async () => {
  const { queue, orders, busy, failures, fail, end } = bench();
  queue.edit([turn(1)]);
  queue.edit([turn(2)]);
  await fail(0);
  expect(failures).toHaveLength(1);
  expect(busy).toEqual([true]);
  expect(orders).toHaveLength(2);
  await end(1);
  expect(busy).toEqual([true, false]);
});

it('turns of one quantity in a row are all made to the text before the first of them, other changes to the newest text', async () => {
  const { queue, orders, goneOn, end } = bench();
  queue.edit([turn(1)]);
  await end(0);
  queue.edit([turn(2)]);
  await end(1);
  const angle: Edit = { kind: 'adjust', key: 'closingAngle', value: 7 };
  queue.edit([angle]);
  await end(2);
  queue.edit([turn(3)]);
  await end(3);
  expect(orders.map(({ text }) => text)).toEqual(['a', 'a', 'a+2', 'a+2+7']);
  expect(goneOn).toEqual([false, true, false, false]);
});

it('knows whether changes wait or are under way', async () => {
  const { queue, end } = bench();
  queue.again({ units: 'us' });
  expect(queue.hasEdits()).toBe(false);
  queue.edit([turn(1)]);
  expect(queue.hasEdits()).toBe(true);
  expect(queue.isWaiting()).toBe(true);
  await end(0);
  expect(queue.hasEdits()).toBe(true);
  expect(queue.isWaiting()).toBe(false);
  await end(1);
  expect(queue.hasEdits()).toBe(false);
});

it('a turn that is refused leaves the turn before it', async () => {
  const { queue, orders, end } = bench();
  queue.edit([turn(1)]);
  await end(0);
  queue.edit([turn(-1)]);
  await end(1, 'refused');
  queue.edit([{ kind: 'adjust', key: 'closingAngle', value: 7 }]);
  expect(orders[2]!.text).toBe('a+1');
});
