import { useComputed } from '@preact/signals';
import { thermalBar } from '../../report/live/thermalBar.ts';
import type { StationProps } from './stationSignal.ts';

/** The overload relay's thermal memory as a bar with the level at which it trips. Nothing where there is none. */
export function Overload({ station }: StationProps) {
  const isThere = useComputed(() => station.value !== null && station.value.overload !== null);
  const isTripped = useComputed(() => station.value?.overload?.tripped === true);
  if (!isThere.value) return null;
  return (
    <section class="device" aria-label="Overload relay" data-alarm={isTripped.value}>
      <h3>-F2 overload relay</h3>
      <Memory station={station} />
      <p class="device-words">
        {isTripped.value ? <strong>tripped: its contact stays open until it is reset</strong> : 'not tripped'}
      </p>
    </section>
  );
}

function Memory({ station }: StationProps) {
  const overload = station.value?.overload;
  if (overload == null) return null;
  const { width, tripX, text } = thermalBar(overload);
  return (
    <>
      <svg class="memory" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
        <rect class="memory-ground" x="0" y="2" width="100" height="6" />
        <rect class="memory-heat" x="0" y="2" width={width} height="6" />
        <line x1={tripX} x2={tripX} y1="0" y2="10" />
      </svg>
      <p class="device-words">heat {text}</p>
    </>
  );
}
