import type { RunEvent, Trajectory } from '../simulate/trajectory.ts';
import { DEVICE_WORDS } from '../starter/control/controlCircuit.ts';
import { displayWidth } from './displayWidth.ts';
import { speedMatters, speedWords } from './eventSentence.ts';
import type { UnitSystem } from './formatQuantity.ts';

/** An instant worth a word, s. */
export interface SequenceMark {
  readonly t: number;
  readonly label: string;
}

/** How a window's marks are chosen. */
export interface MarkOptions {
  readonly t0: number;
  readonly t1: number;
  readonly units: UnitSystem;
  /** run: what people and protection do and what the machine makes of it; changeover: also each step of contacts and relays. */
  readonly detail: 'run' | 'changeover';
}

/** More marks than this cannot be told apart in one figure; the table of events has them all. */
const MOST_MARKS = 10;
/** Nearer than this share of the window two lines cannot be told apart. */
const LEAST_GAP = 1 / 130;
/** Longest label, columns: one that begins in the middle of a narrow drawing still ends inside it. */
const LONGEST = 33;

interface Candidate extends SequenceMark {
  /** 0 comes first. */
  readonly rank: number;
}

/**
 * Words for the instants of a window that matter. Kinds of events come in order of their weight; a kind that does not fit in as
 * a whole is left out as a whole, since half of it would mislead. Of two that cannot be told apart the weightier stays.
 */
export function sequenceMarks(run: Trajectory, options: MarkOptions): SequenceMark[] {
  const { t0, t1, detail } = options;
  const candidates = [...run.events.flatMap((event) => eventMark(event, options)), ...poleMarks(run, detail)]
    .filter(({ t }) => t >= t0 && t <= t1)
    .sort((a, b) => a.rank - b.rank || a.t - b.t);
  const kept: SequenceMark[] = [];
  for (const rank of new Set(candidates.map((candidate) => candidate.rank))) {
    const apart: SequenceMark[] = [];
    for (const candidate of candidates.filter((one) => one.rank === rank)) {
      const near = (mark: SequenceMark) => Math.abs(mark.t - candidate.t) < LEAST_GAP * (t1 - t0);
      if (!kept.some(near) && !apart.some(near)) apart.push({ t: candidate.t, label: candidate.label });
    }
    if (kept.length + apart.length <= MOST_MARKS) kept.push(...apart);
  }
  return kept.sort((a, b) => a.t - b.t);
}

function eventMark(event: RunEvent, { detail, units }: MarkOptions): Candidate[] {
  const words = eventWords(event);
  if (words === null) return [];
  const rank = detail === 'run' ? words.rank : words.changeoverRank;
  if (rank === null) return [];
  const spoken = `${words.label}, ${speedWords(event.speed, units)}`;
  const label = speedMatters(event) && displayWidth(spoken) <= LONGEST ? spoken : words.label;
  return [{ t: event.t, label, rank }];
}

interface Words {
  readonly label: string;
  readonly rank: number | null;
  readonly changeoverRank: number | null;
}

/** Label and weight of an event; null for what only the rows and the table show. */
function eventWords(event: RunEvent): Words | null {
  const words = (label: string, rank: number | null, changeoverRank: number | null = rank): Words => ({
    label,
    rank,
    changeoverRank,
  });
  const device = event.device === undefined ? '' : DEVICE_WORDS[event.device];
  switch (event.kind) {
    case 'shortCircuit':
      return words('short circuit between phases', 0);
    case 'overloadTrips':
      return words('overload relay trips', 0);
    case 'emergencyStopPressed':
      return words('emergency stop', 0);
    case 'supplyLost':
      return words('supply lost', 0);
    case 'supplyReturns':
      return words('supply back', 0);
    case 'phaseLost':
      return words(`supply phase ${event.phase} lost`, 0);
    case 'contactorSticks':
      return words(`${event.contactor} contactor stays in`, 0);
    case 'interlockBlocks':
      return words(`interlock holds ${event.contactor} out`, 3, 1);
    case 'buttonPressed':
      return words(`${device} pressed`, 1);
    case 'action':
      return words(event.text.replace('command: ', ''), 1);
    case 'coilReleased':
      return words(`${event.contactor} coil drops`, speedMatters(event) ? 2 : 5, 1);
    case 'coilEnergised':
      return words(`${event.contactor} coil picks up`, 5, 1);
    case 'zeroSpeed':
      return words('zero speed', 3);
    case 'switchOpens':
      return words('zero-speed switch opens', 4, 2);
    case 'overloadResets':
      return words('overload relay reset', 4);
    case 'emergencyStopReleased':
      return words('emergency stop released', 4);
    case 'timerElapses':
      return words(`${device} over`, 6, 2);
    case 'voltageDips':
      return words('control voltage too low', 6, 2);
    case 'relayPicksUp':
    case 'relayDropsOut': {
      const isRelay = event.contactor === undefined && device !== '';
      return isRelay ? words(`${device} ${event.kind === 'relayPicksUp' ? 'in' : 'out'}`, null, 4) : null;
    }
    default:
      return null;
  }
}

/** The first touch of each closing; in a figure of milliseconds also the first parting and the last extinction of each opening. */
function poleMarks(run: Trajectory, detail: MarkOptions['detail']): Candidate[] {
  return (['forward', 'reverse'] as const).flatMap((contactor) =>
    poleMoves(run.events.filter((event) => event.contactor === contactor)).flatMap((move): Candidate[] => {
      const first = move[0]!;
      if (first.kind === 'poleTouches')
        return [{ t: first.t, label: `${contactor} contactor closes`, rank: detail === 'run' ? 2 : 1 }];
      if (detail === 'run') return [];
      const cleared = move.findLast((event) => event.kind === 'poleClears');
      const parts = { t: first.t, label: `${contactor} contacts part`, rank: 3 };
      return cleared === undefined
        ? [parts]
        : [parts, { t: cleared.t, label: `${contactor} poles clear`, rank: 1 }];
    }),
  );
}

/** The events of one contactor's poles, in turn those of a closing and those of an opening. */
function poleMoves(events: readonly RunEvent[]): RunEvent[][] {
  const moves: RunEvent[][] = [];
  for (const event of events) {
    if (!POLE_KINDS.has(event.kind)) continue;
    const move = moves.at(-1);
    if (move !== undefined && isTouch(move[0]!) === isTouch(event)) move.push(event);
    else moves.push([event]);
  }
  return moves;
}

function isTouch(event: RunEvent): boolean {
  return event.kind === 'poleTouches';
}

const POLE_KINDS: ReadonlySet<RunEvent['kind']> = new Set(['poleTouches', 'poleParts', 'poleClears']);
