import { useComputed } from '@preact/signals';
import type { ContactorName } from '../../starter/starter.ts';
import type { StationProps } from './stationSignal.ts';

/** The zero-speed switch: one contact for each direction of rotation. Nothing where there is none. */
export function ZeroSpeedSwitch({ station }: StationProps) {
  const isThere = useComputed(() => station.value !== null && station.value.zeroSpeedSwitch !== null);
  if (!isThere.value) return null;
  return (
    <section class="device" aria-label="Zero-speed switch">
      <h3>-B1 zero-speed switch</h3>
      <ul class="device-contacts">
        <Contact station={station} direction="forward" />
        <Contact station={station} direction="reverse" />
      </ul>
    </section>
  );
}

function Contact({ station, direction }: StationProps & { readonly direction: ContactorName }) {
  const isOn = useComputed(() => station.value?.zeroSpeedSwitch?.[direction] === true);
  return (
    <li>
      <svg class="contact-drawing" viewBox="0 0 40 16" aria-hidden="true">
        <path d="M0 12H12M28 12H40" />
        <path d={isOn.value ? 'M12 12H28' : 'M12 12L26 3'} />
      </svg>
      {direction}: {isOn.value ? 'actuated' : 'at rest'}
    </li>
  );
}
