import { type ReadonlySignal, useSignal, useSignalEffect } from '@preact/signals';
import { useRef } from 'preact/hooks';
import { dueAnswer } from '../../scenario/edit/dueAnswer.ts';
import type { PageState } from '../state.ts';

/** What a hand has asked for and not been answered yet: the next thing that it asks for builds on that. */
export interface Asked<T> {
  /** null: all has been answered, and what is shown is what was asked for or what was left of it. */
  readonly value: ReadonlySignal<T | null>;
  /** Asks for it by the given edit. */
  ask(value: T, edit: () => void): void;
}

/** Keeps what was last asked for until its answer is there. */
export function useAsked<T>(state: PageState): Asked<T> {
  const value = useSignal<T | null>(null);
  const due = useRef(0);
  const seen = useRef({ text: state.text.peek(), answers: state.answers.peek() });
  useSignalEffect(() => {
    const now = { text: state.text.value, answers: state.answers.value };
    // A text that comes without an answer has been opened: what was asked of the one before it is void.
    const opened = now.text !== seen.current.text && now.answers === seen.current.answers;
    seen.current = now;
    if (value.value === null) return;
    if (opened || now.answers >= due.current || !state.pending.value) value.value = null;
  });
  return {
    value,
    ask(next, edit) {
      due.current = dueAnswer(state.answers.peek(), state.pending.peek());
      edit();
      value.value = next;
    },
  };
}
