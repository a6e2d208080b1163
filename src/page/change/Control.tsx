import { useId } from 'preact/hooks';
import { timeText } from '../../report/live/slider.ts';
import { brakes, WORD_OF_SCHEME } from '../../scenario/controlWords.ts';
import type { ControlOption } from '../../scenario/edit/edit.ts';
import { lossWords } from '../../scenario/edit/lossWords.ts';
import { readField } from '../../scenario/edit/readField.ts';
import { TRIP_CLASSES } from '../../scenario/edit/tripClasses.ts';
import type { SchemeName } from '../../scenario/scenario.ts';
import type { PageProps } from '../actions.ts';
import { QuantityField } from './QuantityField.tsx';

const SCHEMES = Object.entries(WORD_OF_SCHEME) as readonly (readonly [SchemeName, string])[];

/** s; what category 1 begins with. */
const BRAKING_LIMIT = 2;

/** Which control circuit drives the coils, and what it is built with. */
export function Control({ state, act }: PageProps) {
  const lossId = useId();
  const view = state.view.value;
  if (view === null) return null;
  const { control } = view.scenario.starter;
  const losses = lossWords(view.scenario);
  const choose = (option: ControlOption) => act.edit({ kind: 'control', option });
  const scheme = SCHEMES.find(([name]) => name === control?.scheme)?.[0] ?? null;
  const braking = scheme !== null && brakes(scheme);
  const check = (
    key: 'memoryRelay' | 'readyRelay' | 'mechanicalInterlock' | 'coilVoltage',
    label: string,
    checked: boolean,
    disabled = false,
  ) => (
    <label class="check">
      <input
        type="checkbox"
        checked={checked}
        disabled={disabled}
        onChange={({ currentTarget }) => choose({ key, value: currentTarget.checked })}
      />
      {label}
    </label>
  );
  const time = (key: 'changeoverTimer' | 'relayTime' | 'scanTime', label: string, seconds: number) => (
    <QuantityField
      state={state}
      label={label}
      text={timeText(seconds)}
      read={(typed) => readField(typed, 'time', 'ms')}
      onValue={(value) => {
        if (value !== null) choose({ key, value });
      }}
    />
  );
  return (
    <fieldset class="control-choice">
      <legend>Control circuit</legend>
      <label class="field">
        Scheme
        <select
          value={scheme ?? ''}
          aria-describedby={losses.length === 0 ? undefined : lossId}
          onChange={({ currentTarget }) => {
            const chosen = SCHEMES.find(([name]) => name === currentTarget.value);
            act.edit({ kind: 'scheme', scheme: chosen?.[0] ?? null });
          }}
        >
          <option value="">none: commands act on the coils</option>
          {SCHEMES.map(([name, words]) => (
            <option value={name} key={name}>
              {words}
            </option>
          ))}
        </select>
      </label>
      {losses.length === 0 ? null : (
        <ul class="losses muted" id={lossId}>
          {losses.map((words) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
      )}
      {control === undefined ? null : (
        <details>
          <summary>What it is built with</summary>
          {check(
            'memoryRelay',
            'memory relay: brakes only what a contactor has driven',
            control.memoryRelay,
            !braking,
          )}
          {check('readyRelay', 'ready relay: starts only after reset', control.readyRelay)}
          {check(
            'mechanicalInterlock',
            'mechanical interlock of the contactors',
            control.mechanicalInterlock,
          )}
          {check('coilVoltage', 'coils feel the control voltage', control.coilVoltage !== null)}
          <label class="field">
            Overload relay
            <select
              value={control.overload?.tripClass ?? ''}
              onChange={({ currentTarget }) => {
                const value = TRIP_CLASSES.find((one) => one === currentTarget.value) ?? null;
                choose({ key: 'overload', value });
              }}
            >
              <option value="">none</option>
              {TRIP_CLASSES.map((one) => (
                <option value={one} key={one}>
                  class {one}
                </option>
              ))}
            </select>
          </label>
          <label class="field">
            Emergency stop
            <select
              value={control.emergencyStop.category === 1 ? '1' : '0'}
              disabled={!braking}
              onChange={({ currentTarget }) =>
                choose({
                  key: 'emergencyStopLimit',
                  value: currentTarget.value === '1' ? BRAKING_LIMIT : null,
                })
              }
            >
              <option value="0">category 0: both coils drop at once</option>
              <option value="1">category 1: brakes, at most a stated time</option>
            </select>
          </label>
          {control.emergencyStop.category === 1 ? (
            <QuantityField
              state={state}
              label="Brakes at most"
              text={timeText(control.emergencyStop.limit)}
              read={(typed) => readField(typed, 'time', 'ms')}
              onValue={(value) => choose({ key: 'emergencyStopLimit', value })}
            />
          ) : null}
          {time('relayTime', 'Auxiliary relays move in', control.relayTime)}
          {time('scanTime', 'A program scans every (0: wired)', control.scanTime)}
        </details>
      )}
    </fieldset>
  );
}
