import { useComputed } from '@preact/signals';
import type { StationProps } from './stationSignal.ts';

/** Relays, timers, the control voltage, and what else is switched, in words. */
export function OtherDevices({ station }: StationProps) {
  const names = useComputed(() =>
    linesOf(station.value)
      .map(([name]) => name)
      .join('\n'),
  );
  if (names.value === '') return null;
  return (
    <section class="device device-wide" aria-label="Relays and other devices">
      <h3>Relays and others</h3>
      <ul class="device-list">
        {names.value.split('\n').map((name) => (
          <Line key={name} station={station} name={name} />
        ))}
      </ul>
    </section>
  );
}

function Line({ station, name }: StationProps & { readonly name: string }) {
  const words = useComputed(() => linesOf(station.value).find(([own]) => own === name)?.[1] ?? '');
  return (
    <li>
      <span>{name}</span> <span class="device-state">{words.value}</span>
    </li>
  );
}

function linesOf(station: StationProps['station']['value']): (readonly [name: string, words: string])[] {
  if (station === null) return [];
  const voltage = station.controlVoltage;
  return [
    ...station.relays.map(
      ({ label, coil, operated }) =>
        [label, `coil ${coil ? 'on' : 'off'}, ${operated ? 'operated' : 'at rest'}`] as const,
    ),
    ...(voltage === null ? [] : [['control voltage', voltage ? 'there' : 'too low'] as const]),
    ...station.auxiliaries.map(({ label, words }) => [label, words] as const),
  ];
}
