import { useSignal, useSignalEffect } from '@preact/signals';
import { useId } from 'preact/hooks';
import {
  adjustableText,
  fieldText,
  fieldUnit,
  fieldValue,
  firstValue,
  SLIDER_KEYS,
  SLIDER_POSITIONS,
  sliderPosition,
  sliderStep,
  sliderValue,
} from '../../report/live/slider.ts';
import { ADJUSTABLES } from '../../scenario/edit/adjustable.ts';
import { dueAnswer } from '../../scenario/edit/dueAnswer.ts';
import type { AdjustableKey } from '../../scenario/edit/edit.ts';
import type { PageProps } from '../actions.ts';
import { QuantityField } from './QuantityField.tsx';

/** What a hand has asked for while its run is not there yet. */
interface Asked {
  /** SI */
  readonly value: number;
  readonly position: number;
  /** The hand has let go. */
  readonly released: boolean;
  /** Number of answers from which on its run is there. */
  readonly due: number;
}

/** One quantity to turn: a slider, a field with its unit, and whether the element is there at all. */
export function Adjuster({
  state,
  act,
  adjustable: key,
}: PageProps & { readonly adjustable: AdjustableKey }) {
  const asked = useSignal<Asked | null>(null);
  const id = useId();
  useSignalEffect(() => {
    // The thumb follows the hand, and the run that is shown only once that is the run of the hand's last word.
    if (asked.value?.released !== true) return;
    if (state.answers.value >= asked.value.due || !state.pending.value) asked.value = null;
  });
  // A choice that was refused is drawn back.
  void state.answers.value;
  const view = state.view.value;
  if (view === null) return null;
  const { scenario } = view;
  const units = state.units.value;
  const { label, read, range: rangeOf, absentWords, whyNot, whyNeeded } = ADJUSTABLES[key];
  const reason = whyNot(scenario);
  const name = label(scenario);
  const value = read(scenario);
  const range = rangeOf(scenario);
  const needed = whyNeeded(scenario);
  const turn = (si: number, position: number, released: boolean) => {
    const due = dueAnswer(state.answers.peek(), state.pending.peek());
    act.edit({ kind: 'adjust', key, value: si });
    asked.value = { value: si, position, released, due };
  };
  const present = asked.value?.value ?? value ?? firstValue(key, scenario);
  const position = asked.value?.position ?? sliderPosition(present, range);
  return (
    <div class="adjuster" data-adjustable={key}>
      <div class="adjuster-head">
        {reason === null ? <label for={id}>{name}</label> : <span>{name}</span>}
        <output>{adjustableText(key, value, scenario, units)}</output>
      </div>
      {reason === null ? (
        <div class="adjuster-hand">
          <input
            id={id}
            type="range"
            min={0}
            max={SLIDER_POSITIONS}
            step={1}
            value={position}
            disabled={value === null}
            aria-valuetext={adjustableText(key, value === null ? null : present, scenario, units)}
            onInput={({ currentTarget }) => {
              const to = currentTarget.valueAsNumber;
              turn(sliderValue(to, range), to, false);
            }}
            onChange={() => {
              if (asked.value !== null) asked.value = { ...asked.value, released: true };
            }}
            onKeyDown={(event) => {
              const step = SLIDER_KEYS[event.key];
              if (step === undefined || event.ctrlKey || event.altKey || event.metaKey) return;
              event.preventDefault();
              const to = sliderStep(present, range, step, fieldUnit(key, scenario, units).perSi);
              turn(to, sliderPosition(to, range), true);
            }}
          />
          <QuantityField
            state={state}
            label={`${name}, number with unit`}
            quiet
            text={fieldText(key, value, scenario, units)}
            read={(typed) => fieldValue(key, typed, scenario, units)}
            onValue={(si) => act.edit({ kind: 'adjust', key, value: si })}
          />
        </div>
      ) : (
        <p class="muted">Cannot be turned: {reason}.</p>
      )}
      {absentWords === null ? null : (
        <label class="adjuster-absent">
          <input
            type="checkbox"
            checked={value === null}
            disabled={value !== null && needed !== null}
            onChange={({ currentTarget }) =>
              act.edit({
                kind: 'adjust',
                key,
                value: currentTarget.checked ? null : firstValue(key, scenario),
              })
            }
          />
          {absentWords}
          {value !== null && needed !== null ? <span class="muted"> ({needed})</span> : null}
        </label>
      )}
    </div>
  );
}
