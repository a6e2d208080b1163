import { type Edit, joinEdits } from '../../scenario/edit/edit.ts';
import type { RunAnswer, RunOrder } from './protocol.ts';

/** A text and how it is run; what is seen of it is asked for at each run. */
export type Newest = Omit<RunOrder, 'edits' | 'detail'>;

/** What stands in line: the newest text, and the changes that came after it. */
export interface RunQueue {
  /** Another text: what was in line before it is dropped, and the answer under way is not shown. */
  open(order: Newest): void;
  /** Changes to whatever text is the newest. */
  edit(edits: readonly Edit[]): void;
  /** Runs the newest text again. */
  again(change: Partial<Pick<Newest, 'units' | 'hidden'>>): void;
  /** True while changes wait or are under way. */
  hasEdits(): boolean;
  /** True while newer input waits than what is being answered. */
  isWaiting(): boolean;
}

/** Whom the queue tells. */
export interface RunQueueEnds {
  run(order: Omit<RunOrder, 'detail'>): Promise<RunAnswer>;
  /**
   * An answer about the newest text.
   *
   * @param goesOn it turns on what the run before it turned, and is made of the same text as that
   */
  show(answer: RunAnswer, goesOn: boolean): void;
  /** Whether a run of newer input is under way. */
  busy(pending: boolean): void;
  fail(error: unknown): void;
}

/** Turns of one quantity, one after the other, and the text before the first of them. */
interface Turning {
  readonly key: string;
  readonly from: string;
}

/**
 * One run at a time, always of the newest input: changes that come while a run is under way are joined and go next. An answer is shown
 * unless another text has been opened since it was asked for. Turns of one quantity in a row are all made to the text before the first
 * of them: what else they move goes back when the hand goes back.
 */
export function runQueue(first: Newest, ends: RunQueueEnds): RunQueue {
  let newest = first;
  let edits: readonly Edit[] = [];
  let generation = 0;
  let waiting = false;
  let working = false;
  let editing = false;
  let turning: Turning | null = null;

  async function answerNext(): Promise<void> {
    const asked = generation;
    const key = turnedKey(edits);
    const goesOn = key !== null && turning?.key === key;
    const from = goesOn ? turning!.from : newest.text;
    const order = { ...newest, text: from, edits };
    editing = edits.length > 0;
    edits = [];
    try {
      const answer = await ends.run(order);
      if (asked !== generation) return;
      if (answer.kind === 'run') {
        newest = { ...newest, text: answer.text };
        if (editing) turning = key === null ? null : { key, from };
      }
      ends.show(answer, goesOn);
    } catch (error) {
      ends.fail(error);
    } finally {
      editing = false;
    }
  }

  async function work(): Promise<void> {
    if (working) return;
    working = true;
    ends.busy(true);
    while (waiting) {
      waiting = false;
      await answerNext();
    }
    working = false;
    ends.busy(false);
  }

  function ask(): void {
    waiting = true;
    void work();
  }

  return {
    open(order) {
      generation++;
      newest = order;
      edits = [];
      turning = null;
      ask();
    },
    edit(more) {
      edits = joinEdits([...edits, ...more]);
      ask();
    },
    again(change) {
      newest = { ...newest, ...change };
      ask();
    },
    isWaiting: () => waiting,
    hasEdits: () => editing || edits.length > 0,
  };
}

/** The one quantity that edits turn; null where they do anything else. */
function turnedKey(edits: readonly Edit[]): string | null {
  const [only, ...others] = edits;
  return only?.kind === 'adjust' && others.length === 0 ? only.key : null;
}
