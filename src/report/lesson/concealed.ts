import type { Channel } from '../../simulate/channels.ts';
import { PHASES } from '../contactIntervals.ts';
import type { FigureSpec, PanelSpec } from '../figureSpec.ts';
import type { KeyNumber } from '../keyNumbers.ts';
import type { Film } from '../live/film.ts';
import type { NumberRow } from '../live/numberRows.ts';
import type { RunPictures, RunView } from '../live/runView.ts';
import { isIn } from './readings.ts';

/** Said where a sentence is withheld. */
export const WITHHELD = 'Something may be wrong with this starter. Take readings and find out.';

/** Words that name a fault or its consequence. "Dead time" is an ordinary quantity. */
const TELLING =
  /\b(?:weld\w*|lost|stuck|dead(?![- ]time)|never|missing|broken|faults?|fails?|is back|stays in|interlock)\b/iu;
/** Rows of the contacts that an eye cannot see: a main pole behind its arc chamber, a phase of the supply. */
const UNSEEN_ROW = /^(?:(?:forward|reverse|supply) [ABC])$/u;

/**
 * Events that are seen or heard from outside the starter, or that a hand makes; coils, poles, relays and the contact of the zero-speed
 * switch are not among them. A coil that has no other cause than a hand's
 * command is driven by hand.
 */
const NOTICED =
  /^(?:[^:]* button (?:pressed|released)|[^:]* contactor is (?:in|out)|\w+ coil energised|\w+ coil released: (?:coast|apply brake|inject dc|plug|start forward|start reverse)|overload relay .*|control voltage .*|emergency stop.*|speed passes through zero|dry friction holds .*|torque overcomes .*|the speed has settled|the mechanical brake (?:sets|lets go))$/u;

/** True where a technician beside a starter in service notices an event. */
export function isNoticed(text: string): boolean {
  return NOTICED.test(text);
}

/** True where a text would give a hidden fault away. */
export function isTelling(text: string): boolean {
  return TELLING.test(text);
}

/**
 * A run as a student may see it who has to find out what is wrong: curves and numbers stay, but nothing says or marks the cause, and
 * poles are drawn
 * as the armature moves, for nobody sees them in a starter that is in service.
 */
export function concealed(view: RunView): RunView {
  const { faults: _, ...starter } = view.scenario.starter;
  return {
    ...view,
    scenario: { ...view.scenario, starter },
    finding: WITHHELD,
    alarms: view.usable ? [] : ['The run ended before it was told to; what follows is not shown.'],
    keyNumbers: view.keyNumbers.map(concealedKeyNumber),
    numbers: view.numbers.map((group) => ({ ...group, rows: group.rows.map(concealedRow) })),
    ...concealedPictures(view),
    stretches: view.stretches.filter(({ label }) => !isTelling(label)),
  };
}

/** The pictures of such a run. */
export function concealedPictures({ time, plane, film }: RunPictures): RunPictures {
  return {
    time: concealedFigure(time, 'Currents, torque, speed and voltage of this run'),
    plane: concealedFigure(plane, 'Torque against speed in this run'),
    film: concealedFilm(film),
  };
}

function concealedKeyNumber(number: KeyNumber): KeyNumber {
  return isTelling(number.detail) ? { ...number, detail: 'not in this run' } : number;
}

function concealedRow(row: NumberRow): NumberRow {
  return isTelling(row.detail) ? { ...row, detail: 'not in this run' } : row;
}

function concealedFigure(figure: FigureSpec, title: string): FigureSpec {
  return {
    ...figure,
    title,
    description: `${title}.`,
    panels: figure.panels.map(concealedPanel),
    marks: figure.marks.filter(({ label }) => !isTelling(label)),
    // Bands say how many terminals conduct, which is read off the contacts: the currents show it to who looks.
    bands: [],
  };
}

function concealedPanel(panel: PanelSpec): PanelSpec {
  return panel.kind === 'states'
    ? { ...panel, rows: panel.rows.filter(({ label }) => !UNSEEN_ROW.test(label)) }
    : panel;
}

function concealedFilm(film: Film): Film {
  return {
    ...film,
    channels: concealedChannels(film.channels),
    auxiliaries: (film.auxiliaries ?? []).filter(({ label }) => !label.startsWith('Supply phase')),
    events: film.events.filter(({ text }) => !isTelling(text) && isNoticed(text)),
  };
}

/**
 * The three poles of a contactor as an onlooker takes them to be: closed while its armature is in. Where coils are driven by hand an
 * armature has no channel: it is in while any pole is closed.
 */
function concealedChannels(channels: readonly Channel[]): readonly Channel[] {
  const others = channels.filter(({ of }) => of.kind !== 'pole');
  const poles = (['forward', 'reverse'] as const).flatMap((contactor): Channel[] => {
    const changes = armatureChanges(channels, contactor);
    return changes.length === 0
      ? []
      : PHASES.map((phase) => ({ of: { kind: 'pole', contactor, phase }, changes }));
  });
  return [...others, ...poles];
}

function armatureChanges(channels: readonly Channel[], contactor: 'forward' | 'reverse'): Channel['changes'] {
  const armature = channels.find(({ of }) => of.kind === 'device' && of.device === `${contactor}Contactor`);
  const poles = channels.filter(({ of }) => of.kind === 'pole' && of.contactor === contactor);
  const moving = armature === undefined ? poles : [armature];
  const instants = [...new Set(moving.flatMap(({ changes }) => changes.map(({ t }) => t)))].sort(
    (x, y) => x - y,
  );
  return instants
    .map((t) => ({ t, value: isIn(channels, contactor, t) ? ('closed' as const) : ('open' as const) }))
    .filter((change, i, all) => i === 0 || all[i - 1]!.value !== change.value);
}
