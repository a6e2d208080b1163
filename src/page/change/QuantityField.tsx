import { useSignal, useSignalEffect } from '@preact/signals';
import { useId } from 'preact/hooks';
import { dueAnswer } from '../../scenario/edit/dueAnswer.ts';
import { placeWords } from '../../scenario/edit/placeWords.ts';
import type { PageState } from '../state.ts';

/** What a field for a number with its unit is given. */
export interface QuantityFieldProps {
  readonly state: PageState;
  readonly label: string;
  /** The label is for those who do not see the place of the field. */
  readonly quiet?: boolean;
  readonly text: string;
  readonly disabled?: boolean;
  /** SI, or what is wrong with what was typed. */
  readonly read: (typed: string) => number | null | { readonly message: string };
  /** Asks for a run with that value. */
  readonly onValue: (value: number | null) => void;
}

/**
 * A number with its unit: takes effect with Enter or on leaving the field; Escape takes back what was typed. What is refused, here or
 * by the scenario, stays to be corrected, with the reason beside it.
 */
export function QuantityField({ state, label, quiet, text, disabled, read, onValue }: QuantityFieldProps) {
  const typed = useSignal<string | null>(null);
  const message = useSignal('');
  /** Number of answers from which on what was typed has been answered; null: it has not been asked for. */
  const due = useSignal<number | null>(null);
  const id = useId();
  useSignalEffect(() => {
    if (due.value === null || (state.answers.value < due.value && state.pending.value)) return;
    due.value = null;
    const why = refusal(state);
    message.value = why;
    if (why === '') typed.value = null;
  });
  const takeBack = () => {
    typed.value = null;
    message.value = '';
    due.value = null;
  };
  const commit = () => {
    // Enter is followed by leaving the field: it is asked for once.
    if (typed.value === null || due.value !== null) return;
    if (typed.value.trim() === text) return takeBack();
    const value = read(typed.value);
    if (typeof value === 'object' && value !== null) {
      message.value = value.message;
      return;
    }
    message.value = '';
    const answer = dueAnswer(state.answers.peek(), state.pending.peek());
    onValue(value);
    due.value = answer;
  };
  return (
    <span class="quantity">
      <label for={id} class={quiet === true ? 'visually-hidden' : undefined}>
        {label}
      </label>
      <input
        id={id}
        type="text"
        autocomplete="off"
        spellcheck={false}
        value={typed.value ?? text}
        disabled={disabled === true}
        aria-invalid={message.value === '' ? undefined : 'true'}
        aria-describedby={message.value === '' ? undefined : `${id}-message`}
        onInput={({ currentTarget }) => {
          typed.value = currentTarget.value;
          due.value = null;
        }}
        onChange={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
          if (event.key === 'Escape') takeBack();
        }}
      />
      {message.value === '' ? null : (
        <span class="field-message" id={`${id}-message`} role="alert">
          {message.value}
        </span>
      )}
    </span>
  );
}

/** Why the last answer was no run; '' where it was one. */
function refusal(state: PageState): string {
  const [problem] = state.problems.peek();
  const trouble = state.trouble.peek();
  return trouble !== '' || problem === undefined ? trouble : placeWords(problem);
}
