import { useComputed } from '@preact/signals';
import { deviceLabel } from '../../report/sequenceRows.ts';
import type { PhaseName } from '../../scenario/scenario.ts';
import type { ContactorName } from '../../starter/starter.ts';
import type { StationProps } from './stationSignal.ts';

const PHASES: readonly PhaseName[] = ['A', 'B', 'C'];

/** One contactor: its coil and armature in words, its three poles as they are. */
export function Contactor({ station, name }: StationProps & { readonly name: ContactorName }) {
  const coil = useComputed(() => station.value?.contactors[name].coil === true);
  const isIn = useComputed(() => station.value?.contactors[name].isIn === true);
  return (
    <section class="device contactor" aria-label={`${name} contactor`} data-on={isIn.value}>
      <h3>{deviceLabel(name === 'forward' ? 'forwardContactor' : 'reverseContactor')}</h3>
      <p class="device-words">
        coil {coil.value ? 'on' : 'off'}, armature {isIn.value ? 'in' : 'out'}
      </p>
      <div class="poles">
        {PHASES.map((phase) => (
          <Pole key={phase} station={station} name={name} phase={phase} />
        ))}
      </div>
    </section>
  );
}

interface PoleProps extends StationProps {
  readonly name: ContactorName;
  readonly phase: PhaseName;
}

/** Open: a gap. Arcing: a jagged line across the gap. Closed: a bridge. Welded: a bridge with a bead on either side. */
function Pole({ station, name, phase }: PoleProps) {
  const pole = useComputed(() => station.value?.contactors[name].poles[phase] ?? 'open');
  const isWelded = useComputed(() => station.value?.contactors[name].welded[phase] === true);
  const state = pole.value;
  return (
    <div class="pole" data-state={state}>
      <svg viewBox="0 0 40 56" aria-hidden="true">
        <path class="pole-lead" d="M20 0V16M20 56V40" />
        <path class="pole-tip" d="M10 16H30M10 40H30" />
        {state === 'closed' ? <path class="pole-bridge" d="M20 16V40" /> : null}
        {state === 'open' ? <path class="pole-moving" d="M8 22V34" /> : null}
        {state === 'arcing' ? <path class="pole-arc" d="M20 17L14 22L25 27L14 32L20 39" /> : null}
        {isWelded.value ? (
          <g class="pole-weld">
            <circle cx="20" cy="16" r="4" />
            <circle cx="20" cy="40" r="4" />
          </g>
        ) : null}
      </svg>
      <span class="pole-phase">{phase}</span>
      <span class="pole-words">{isWelded.value ? 'welded' : state}</span>
    </div>
  );
}
