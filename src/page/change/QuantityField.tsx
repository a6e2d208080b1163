import { useSignal } from '@preact/signals';
import { useId } from 'preact/hooks';

/** What a field for a number with its unit is given. */
export interface QuantityFieldProps {
  readonly label: string;
  /** The label is for those who do not see the place of the field. */
  readonly quiet?: boolean;
  readonly text: string;
  readonly disabled?: boolean;
  /** SI, or what is wrong with what was typed. */
  readonly read: (typed: string) => number | null | { readonly message: string };
  readonly onValue: (value: number | null) => void;
}

/** A number with its unit: takes effect with Enter or on leaving the field; Escape takes back what was typed. */
export function QuantityField({ label, quiet, text, disabled, read, onValue }: QuantityFieldProps) {
  const typed = useSignal<string | null>(null);
  const message = useSignal('');
  const id = useId();
  const commit = () => {
    if (typed.value === null) return;
    const value = read(typed.value);
    if (typeof value === 'object' && value !== null) {
      message.value = value.message;
      return;
    }
    typed.value = null;
    message.value = '';
    onValue(value);
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
        }}
        onChange={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
          if (event.key !== 'Escape') return;
          typed.value = null;
          message.value = '';
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
