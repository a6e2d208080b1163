import { useComputed, useSignal } from '@preact/signals';
import { buttonEdit } from '../../report/live/buttonEdit.ts';
import { heldAfter } from '../../report/live/heldAfter.ts';
import { type ButtonFace, stationButtons, stationCommands } from '../../report/live/stationButtons.ts';
import type { Edit } from '../../scenario/edit/edit.ts';
import type { ButtonName } from '../../scenario/scenario.ts';
import type { PageProps } from '../actions.ts';
import { useAsked } from '../change/useAsked.ts';
import type { StationProps } from './stationSignal.ts';
import { wantsCalm } from './wantsCalm.ts';
import './buttons.css';

/** The buttons that the control circuit has; without one, the commands to the coils. */
export function Buttons({ state, act, station }: PageProps & StationProps) {
  const keep = useSignal(false);
  const asked = useAsked<Partial<Record<ButtonName, boolean>>>(state);
  const view = state.view.value;
  if (view === null) return <p class="station-wait">The first run is being made.</p>;
  const now = () => state.playhead.peek().t;
  const doAndSee = (edit: Edit) => {
    act.edit(edit);
    if (wantsCalm()) act.goToEndWhenShown();
    else act.play();
  };
  const commands = stationCommands(view.scenario);
  if (commands.length > 0)
    return (
      <section class="buttons" aria-label="Commands">
        {commands.map(({ command, words }) => (
          <button
            key={command}
            type="button"
            class="push"
            data-kind={command}
            onClick={() => doAndSee({ kind: 'command', at: now(), do: command })}
          >
            {words}
          </button>
        ))}
        <p class="buttons-note">No control circuit: each button acts on the coils.</p>
      </section>
    );
  const touch = ({ button }: ButtonFace) => {
    const before = asked.value.peek();
    const held = before?.[button] ?? read(station.peek(), button)?.held === true;
    const edit = buttonEdit(view.scenario, { button, held, keep: keep.peek(), at: now() });
    asked.ask({ ...before, [button]: heldAfter(edit) }, () => doAndSee(edit));
  };
  return (
    <section class="buttons" aria-label="Push buttons">
      {stationButtons(view.scenario).map((face) => (
        <PushButton key={face.button} face={face} station={station} onTouch={() => touch(face)} />
      ))}
      <label class="buttons-keep">
        <input
          type="checkbox"
          checked={keep}
          onChange={(event) => {
            keep.value = event.currentTarget.checked;
          }}
        />
        Keep the button pressed until it is touched again
      </label>
    </section>
  );
}

interface PushButtonProps extends StationProps {
  readonly face: ButtonFace;
  readonly onTouch: () => void;
}

/** Marks of IEC 60417 beside the words: I puts in motion, O stops. */
const MARKS: Partial<Record<ButtonFace['button'], string>> = {
  forward: 'I ▸',
  reverse: '◂ I',
  stop: 'O',
};

function PushButton({ face, station, onTouch }: PushButtonProps) {
  const { button, designation, words } = face;
  const isPressed = useComputed(() => read(station.value, button)?.pressed === true);
  const isHeld = useComputed(() => read(station.value, button)?.held === true);
  const isRelay = button === 'overloadTest' || button === 'overloadReset';
  const pressed = isPressed.value && !isRelay;
  return (
    <span class="push-place" data-kind={button}>
      <button
        type="button"
        class="push"
        data-kind={button}
        data-pressed={pressed}
        aria-pressed={isRelay ? undefined : pressed}
        title={isHeld.value ? 'Touch again to let go' : undefined}
        onClick={onTouch}
      >
        {MARKS[button] === undefined ? null : (
          <span class="push-mark" aria-hidden="true">
            {MARKS[button]}
          </span>
        )}
        {words}
      </button>
      <span class="push-under">
        -{designation} {pressed ? (isHeld.value ? 'held' : 'pressed') : ''}
      </span>
    </span>
  );
}

function read(station: StationProps['station']['value'], button: ButtonFace['button']) {
  return station?.buttons.find((one) => one.button === button);
}
