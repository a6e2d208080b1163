import { useComputed } from '@preact/signals';
import { stationAt } from '../../report/live/stationAt.ts';
import type { PageProps } from '../actions.ts';
import { Buttons } from './Buttons.tsx';
import { Contactor } from './Contactor.tsx';
import { Events } from './Events.tsx';
import { Machine } from './Machine.tsx';
import { OtherDevices } from './OtherDevices.tsx';
import { Overload } from './Overload.tsx';
import { ZeroSpeedSwitch } from './ZeroSpeedSwitch.tsx';
import './station.css';

/** The push-button station, and what the starter and the machine do at the playhead. */
export function Station({ state, act }: PageProps) {
  const station = useComputed(() => {
    const view = state.view.value;
    return view === null ? null : stationAt(view.film, view.scenario, state.playhead.value.t);
  });
  return (
    <div class="station">
      <h2>Push buttons</h2>
      <Buttons state={state} act={act} station={station} />
      <h2>At this instant</h2>
      <div class="station-devices">
        <Contactor station={station} name="forward" />
        <Contactor station={station} name="reverse" />
        <Machine state={state} act={act} />
        <ZeroSpeedSwitch station={station} />
        <Overload station={station} />
        <OtherDevices station={station} />
      </div>
      <Events state={state} act={act} />
    </div>
  );
}
