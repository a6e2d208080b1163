import type { Judgement } from '../../survey/judgement.ts';
import { alternativesGrid, alternativesTable } from '../alternativesTable.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { liveVerdict } from './liveVerdict.ts';
import type { LiveVerdict } from './runView.ts';

/** A whole judgement as plain data in words. */
export interface JudgedView {
  readonly verdict: LiveVerdict;
  /** What the verdict does not cover, one sentence each. */
  readonly reservations: readonly string[];
  /** Other ways to stop: heads of two lines, a row for each way that was simulated. */
  readonly heads: readonly (readonly [string, string])[];
  readonly rows: readonly (readonly string[])[];
  /** What was set for each way, and what a reader must know of it. */
  readonly notes: readonly string[];
}

/** A judgement in words, as the command line tells it. */
export function judgedViewOf(judgement: Judgement, units: UnitSystem): JudgedView {
  const { suitability, alternatives } = judgement;
  return {
    verdict: liveVerdict(suitability, units),
    reservations: suitability.verdict.reservations,
    ...alternativesGrid(alternatives, units),
    notes: alternativesTable(alternatives, suitability.wear, units).notes,
  };
}
