import type { RunResult } from '../../measure/result.ts';
import { nominalFlux } from '../../simulate/tolerances.ts';
import { eventSentence } from '../eventSentence.ts';
import { displayUnit, type UnitSystem } from '../formatQuantity.ts';
import { readTraces, type SampleDensity, sampleDensely, scaled } from '../traces.ts';
import type { Film, FilmBase, FilmColumns } from './film.ts';
import { filmAuxiliaries } from './filmAuxiliaries.ts';
import { filmEnergies, MOST_INSTANTS } from './filmEnergies.ts';
import { filmFeeds } from './filmFeeds.ts';

/** Instants of the energies of a film that is not read in full: heat and work have no corners. */
const DRAFT_INSTANTS = 400;

/**
 * The film of a run, in displayed units, and everything discrete.
 *
 * @param density of the samples; that of printed figures where it is left out
 */
export function filmOf(result: RunResult, units: UnitSystem, density?: SampleDensity): Film {
  const { trajectory } = result;
  const { tStart, tEnd, channels, thermal } = trajectory;
  return {
    units,
    tStart,
    tEnd,
    columns: filmColumns(result, units, density),
    energies: filmEnergies(trajectory, units, density === undefined ? MOST_INSTANTS : DRAFT_INSTANTS),
    channels,
    thermal,
    events: trajectory.events.map((event) => ({ t: event.t, text: eventSentence(event, units) })),
    feeds: filmFeeds(trajectory),
    base: filmBase(result, units),
    auxiliaries: filmAuxiliaries(trajectory),
  };
}

function filmColumns({ trajectory }: RunResult, units: UnitSystem, density?: SampleDensity): FilmColumns {
  const { tStart, tEnd } = trajectory;
  const sampled = sampleDensely(trajectory, tStart, tEnd, density);
  return {
    ...sampled,
    ...readTraces(trajectory, tStart, tEnd, units, density),
    loadSpeed: scaled(sampled.loadSpeed, displayUnit('rad/s', { system: units }).perSi),
  };
}

function filmBase({ scenario, rated }: RunResult, units: UnitSystem): FilmBase {
  const { lineVoltage, frequency } = scenario.supply;
  const { polePairs } = scenario.machine;
  const synchronous = (2 * Math.PI * frequency) / polePairs;
  return {
    currentCrest: Math.SQRT2 * rated.current,
    torque: rated.torque * displayUnit('N·m', { system: units }).perSi,
    synchronousSpeed: synchronous * displayUnit('rad/s', { system: units }).perSi,
    lineVoltage,
    voltageCrest: lineVoltage * Math.sqrt(2 / 3),
    flux: nominalFlux(scenario),
    polePairs,
    frequency,
  };
}
