import { useSignal } from '@preact/signals';
import { faultWords } from '../../report/faultWords.ts';
import { timeText } from '../../report/live/slider.ts';
import {
  FAULT_KINDS,
  FAULT_NAMES,
  type FaultField,
  type FaultKind,
  faultFields,
  newFault,
  whyNoFault,
  withFaultField,
} from '../../scenario/edit/faultFields.ts';
import { readField } from '../../scenario/edit/readField.ts';
import type { StarterFault } from '../../scenario/scenario.ts';
import type { PageProps } from '../actions.ts';
import { QuantityField } from './QuantityField.tsx';
import { useAsked } from './useAsked.ts';

/** What is wrong with the installation: every fault with what can be chosen about it, and one more to add. */
export function Faults({ state, act }: PageProps) {
  const kind = useSignal<FaultKind>('lostPhase');
  const asked = useAsked<readonly StarterFault[]>(state);
  const view = state.view.value;
  if (view === null) return null;
  const { starter } = view.scenario;
  const faults = asked.value.value ?? starter.faults ?? [];
  /** Changes the list as it was last asked for, not as it was last drawn. */
  const change = (to: (now: readonly StarterFault[]) => readonly StarterFault[]) => {
    const next = to(asked.value.peek() ?? state.view.peek()?.scenario.starter.faults ?? []);
    asked.ask(next, () => act.edit({ kind: 'faults', faults: next }));
  };
  const reason = whyNoFault({ starter: { ...starter, faults } }, newFault(kind.value));
  return (
    <fieldset class="faults">
      <legend>Faults</legend>
      {faults.length === 0 ? <p class="muted">Nothing is wrong with the installation.</p> : null}
      <ul>
        {faults.map((fault, index) => (
          <li key={`${fault.kind}-${index}`}>
            <p>{faultWords(fault)}</p>
            <div class="fault-fields">
              {faultFields(fault).map((field) => (
                <FaultFieldInput
                  key={field.name}
                  state={state}
                  field={field}
                  onValue={(value) =>
                    change((now) =>
                      now.map((one, i) => (i === index ? withFaultField(one, field.name, value) : one)),
                    )
                  }
                />
              ))}
              <button
                type="button"
                aria-label={`Take away: ${faultWords(fault)}`}
                onClick={() => change((now) => now.toSpliced(index, 1))}
              >
                Take away
              </button>
            </div>
          </li>
        ))}
      </ul>
      <div class="fault-add">
        <label class="field">
          One more
          <select
            value={kind.value}
            onChange={({ currentTarget }) => {
              kind.value = FAULT_KINDS.find((one) => one === currentTarget.value) ?? kind.value;
            }}
          >
            {FAULT_KINDS.map((one) => (
              <option value={one} key={one}>
                {FAULT_NAMES[one]}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          disabled={reason !== null}
          onClick={() => change((now) => [...now, newFault(kind.value)])}
        >
          Add
        </button>
      </div>
      {reason === null ? null : <p class="muted">Cannot be added: it {reason}.</p>}
    </fieldset>
  );
}

function FaultFieldInput({
  state,
  field,
  onValue,
}: Pick<PageProps, 'state'> & {
  readonly field: FaultField;
  readonly onValue: (value: string | number | null) => void;
}) {
  if (field.kind === 'time')
    return (
      <QuantityField
        state={state}
        label={field.label}
        text={field.value === null ? '' : timeText(field.value)}
        read={(typed) => (typed.trim() === '' ? null : readField(typed, 'time', 'ms'))}
        onValue={onValue}
      />
    );
  return (
    <label class="field">
      {field.label}
      <select value={field.value} onChange={({ currentTarget }) => onValue(currentTarget.value)}>
        {Object.entries(field.options).map(([value, words]) => (
          <option value={value} key={value}>
            {words}
          </option>
        ))}
      </select>
    </label>
  );
}
