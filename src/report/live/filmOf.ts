import type { RunResult } from '../../measure/result.ts';
import { nominalFlux } from '../../simulate/tolerances.ts';
import { eventSentence } from '../eventSentence.ts';
import { displayUnit, type UnitSystem } from '../formatQuantity.ts';
import { lineRms, sampleDensely } from '../traces.ts';
import type { Film, FilmBase, FilmColumns } from './film.ts';
import { filmAuxiliaries } from './filmAuxiliaries.ts';
import { filmEnergies } from './filmEnergies.ts';
import { filmFeeds } from './filmFeeds.ts';

/** The film of a run, in displayed units: the samples of the static figures, and everything discrete. */
export function filmOf(result: RunResult, units: UnitSystem): Film {
  const { trajectory } = result;
  const { tStart, tEnd, channels, thermal } = trajectory;
  return {
    units,
    tStart,
    tEnd,
    columns: filmColumns(result, units),
    energies: filmEnergies(trajectory, units),
    channels,
    thermal,
    events: trajectory.events.map((event) => ({ t: event.t, text: eventSentence(event, units) })),
    feeds: filmFeeds(trajectory),
    base: filmBase(result, units),
    auxiliaries: filmAuxiliaries(trajectory),
  };
}

function filmColumns({ trajectory }: RunResult, units: UnitSystem): FilmColumns {
  const sampled = sampleDensely(trajectory, trajectory.tStart, trajectory.tEnd);
  const torquePerSi = displayUnit('N·m', { system: units }).perSi;
  const speedPerSi = displayUnit('rad/s', { system: units }).perSi;
  return {
    t: sampled.t,
    iA: sampled.iA,
    iB: sampled.iB,
    iC: sampled.iC,
    torque: scaled(sampled.torque, torquePerSi),
    loadTorque: scaled(sampled.loadTorque, torquePerSi),
    couplingTorque: scaled(sampled.couplingTorque, torquePerSi),
    speed: scaled(sampled.speed, speedPerSi),
    loadSpeed: scaled(sampled.loadSpeed, speedPerSi),
    voltage: sampled.uAlpha.map((alpha, i) => lineRms(alpha, sampled.uBeta[i]!)),
    position: sampled.position,
    uAlpha: sampled.uAlpha,
    uBeta: sampled.uBeta,
    psiAlpha: sampled.psiAlpha,
    psiBeta: sampled.psiBeta,
    psiRAlpha: sampled.psiRAlpha,
    psiRBeta: sampled.psiRBeta,
  };
}

function scaled(column: Float64Array, factor: number): Float64Array {
  return factor === 1 ? column : column.map((value) => value * factor);
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
