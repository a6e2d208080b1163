import { expect, it } from 'vitest';
import type { RunAnswer } from '../../../../src/page/worker/protocol.ts';
import { runQueue } from '../../../../src/page/worker/runQueue.ts';
import { dueAnswer } from '../../../../src/scenario/edit/dueAnswer.ts';
import type { Edit } from '../../../../src/scenario/edit/edit.ts';

it('the answer that is due is the one of the run that was made with what was asked for', async () => {
  const runs: { edits: readonly Edit[]; end: () => void }[] = [];
  let answers = 0;
  let pending = false;
  const queue = runQueue(
    { text: 'a', fileName: 'a.yaml', units: 'SI', hidden: null },
    {
      run: (order) =>
        new Promise((resolve) => {
          runs.push({ edits: order.edits, end: () => resolve({ kind: 'run', text: 'a' } as RunAnswer) });
        }),
      show: () => {
        answers++;
      },
      busy: (is) => {
        pending = is;
      },
      fail: () => {},
    },
  );
  const asked: { edit: Edit; due: number }[] = [];
  const ask = (at: number) => {
    const edit: Edit = { kind: 'button', at, do: 'press', button: 'stop' };
    asked.push({ edit, due: dueAnswer(answers, pending) });
    queue.edit([edit]);
  };
  ask(1);
  ask(2);
  ask(3);
  for (let i = 0; i < 2; i++) {
    runs[i]?.end();
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
  ask(4);
  for (const { edit, due } of asked) expect(runs[due - 1]?.edits).toContain(edit);
});
