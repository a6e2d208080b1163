import type { PhaseName } from '../../scenario/scenario.ts';
import type { RunEvent, RunEventKind, Trajectory } from '../../simulate/trajectory.ts';
import { PHASES } from '../contactIntervals.ts';
import type { FilmAuxiliary } from './film.ts';

/** What a starter has besides its two contactors, and the supply phases that a run loses. */
export function filmAuxiliaries(run: Trajectory): FilmAuxiliary[] {
  const { starter, initial } = run.scenario;
  const found: FilmAuxiliary[] = [];
  if (starter.lineResistors !== undefined) {
    // A running machine has its line resistors bypassed.
    const changes = changesOf(run, initial !== 'rest', { bypassCloses: true, bypassOpens: false });
    found.push({ label: 'Bypass of the line resistors', onWord: 'closed', offWord: 'open', changes });
  }
  if (starter.brake !== undefined) {
    const changes = changesOf(run, false, { brakeSets: true, brakeReleases: false });
    found.push({ label: 'Mechanical brake', onWord: 'set', offWord: 'released', changes });
  }
  if (starter.injection !== undefined) {
    const changes = changesOf(run, false, { injectionBegins: true, injectionEnds: false });
    found.push({ label: 'Direct current', onWord: 'on', offWord: 'off', changes });
  }
  const lost = PHASES.filter((phase) => run.events.some((event) => loses(event, phase)));
  return [...found, ...lost.map((phase) => supplyPhase(run, phase))];
}

function changesOf(
  run: Trajectory,
  first: boolean,
  meaning: Partial<Record<RunEventKind, boolean>>,
): FilmAuxiliary['changes'] {
  const changes = run.events.flatMap(({ t, kind }) => {
    const on = meaning[kind];
    return on === undefined ? [] : [{ t, on }];
  });
  return [{ t: run.tStart, on: first }, ...changes];
}

function loses(event: RunEvent, phase: PhaseName): boolean {
  return event.kind === 'phaseLost' && event.phase === phase;
}

/** The supply comes back on all phases at once. */
function supplyPhase(run: Trajectory, phase: PhaseName): FilmAuxiliary {
  const changes = run.events.flatMap((event) => {
    if (loses(event, phase)) return [{ t: event.t, on: false }];
    return event.kind === 'supplyReturns' ? [{ t: event.t, on: true }] : [];
  });
  return {
    label: `Supply phase ${phase}`,
    onWord: 'there',
    offWord: 'lost',
    changes: [{ t: run.tStart, on: true }, ...changes],
  };
}
