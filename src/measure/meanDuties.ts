import type { ActionKind, Command, PhaseName } from '../scenario/scenario.ts';
import type { ContactorName } from '../starter/starter.ts';
import { equivalentBreakingCurrent } from './equivalentBreakingCurrent.ts';
import { phaseWeights } from './phaseWeights.ts';
import type { BreakingDuty, MakingDuty, PoleDuty } from './poleDuty.ts';

/** What one making or breaking of a contactor comes to over runs that differ in the instant of opening. */
export interface MeanOccasion {
  readonly contactor: ContactorName;
  /** 1: the contactor's first making (breaking) in the run, 2: its second, … */
  readonly occurrence: number;
  /** The last command before it; null: none. */
  readonly command: ActionKind | null;
  /** Number of runs it occurs in; means are over these. */
  readonly runs: number;
}

/** A contactor makes. */
export interface MeanMaking extends MeanOccasion {
  readonly kind: 'making';
  /** Poles that make it. */
  readonly poles: readonly MakingPole[];
}

/** One pole that makes: mean and worst over the runs that were averaged. */
export interface MakingPole {
  readonly phase: PhaseName;
  /** Mean of the largest |current|, A. */
  readonly meanCrest: number;
  /** Largest |current| of any run, A. */
  readonly worstCrest: number;
  /** Mean of the r.m.s. current, A. */
  readonly meanRms: number;
  /** Largest r.m.s. current of any run, A. */
  readonly worstRms: number;
  /** Charge during the bounce, C; null: no bounce time is known. */
  readonly meanBounceCharge: number | null;
}

/** A contactor breaks. */
export interface MeanBreaking extends MeanOccasion {
  readonly kind: 'breaking';
  readonly poles: readonly BreakingPole[];
  /** All poles together, C. */
  readonly meanArcCharge: number;
  /** `equivalentBreakingCurrent` of it, A r.m.s.; null: the poles are ideal and burn no arc. */
  readonly equivalentCurrent: number | null;
  /** V r.m.s. line to line. */
  readonly meanRecoveryVoltage: number;
}

/** One pole that breaks: mean and worst over the runs that were averaged. */
export interface BreakingPole {
  readonly phase: PhaseName;
  /** Mean |current| at parting, A. */
  readonly meanCurrent: number;
  /** Largest |current| at parting, A. */
  readonly worstCurrent: number;
  /** Mean charge of the arc, C. */
  readonly meanArcCharge: number;
  /** Largest charge of the arc, C. */
  readonly worstArcCharge: number;
}

/** Every making and breaking of one kind of run, in order of time, averaged over instants of opening. */
export interface MeanDuties {
  readonly makings: readonly MeanMaking[];
  readonly breakings: readonly MeanBreaking[];
  /** Contactor that makes or breaks first: the one that drives. */
  readonly driving: ContactorName;
}

/** One run's duties and what led to them. */
export interface DutiesOfRun {
  /** In order of time. */
  readonly duties: readonly PoleDuty[];
  readonly commands: readonly Command[];
  /** Supply angle at t = 0, rad. */
  readonly angle: number;
}

/**
 * Averages the duties of runs of the same actions, each contactor's first making with the first, its second with the second …
 *
 * @param frequency of the supply, Hz
 * @returns null where the runs make and break nothing
 */
export function meanDuties(runs: readonly DutiesOfRun[], frequency: number): MeanDuties | null {
  const makings = new Map<string, Occasion<MakingDuty>>();
  const breakings = new Map<string, Occasion<BreakingDuty>>();
  let driving: ContactorName | null = null;
  for (const run of runs) {
    driving ??= run.duties[0]?.contactor ?? null;
    collect(
      run,
      run.duties.filter((duty) => duty.kind === 'making'),
      makings,
    );
    collect(
      run,
      run.duties.filter((duty) => duty.kind === 'breaking'),
      breakings,
    );
  }
  if (driving === null) return null;
  return {
    driving,
    makings: inOrder(makings).map(meanMaking),
    breakings: inOrder(breakings).map((occasion) => meanBreaking(occasion, frequency)),
  };
}

/** The duties of one occasion: by run, and within a run by pole. */
interface Occasion<T extends PoleDuty> {
  readonly about: Omit<MeanOccasion, 'runs'>;
  /** In the first run that has it, s. */
  readonly t: number;
  readonly byRun: Map<DutiesOfRun, T[]>;
}

function collect<T extends PoleDuty>(
  run: DutiesOfRun,
  duties: readonly T[],
  occasions: Map<string, Occasion<T>>,
): void {
  const counts = new Map<string, number>();
  for (const duty of duties) {
    const pole = `${duty.contactor} ${duty.phase}`;
    const occurrence = (counts.get(pole) ?? 0) + 1;
    counts.set(pole, occurrence);
    const key = `${duty.contactor} ${occurrence}`;
    let occasion = occasions.get(key);
    if (occasion === undefined) {
      const command = run.commands.findLast(({ at }) => at <= duty.t)?.do ?? null;
      occasion = {
        about: { contactor: duty.contactor, occurrence, command },
        t: duty.t,
        byRun: new Map(),
      };
      occasions.set(key, occasion);
    }
    occasion.byRun.set(run, [...(occasion.byRun.get(run) ?? []), duty]);
  }
}

function inOrder<T extends PoleDuty>(occasions: ReadonlyMap<string, Occasion<T>>): Occasion<T>[] {
  return [...occasions.values()].sort((a, b) => a.t - b.t);
}

function meanMaking({ about, byRun }: Occasion<MakingDuty>): MeanMaking {
  const poles = poleLists(byRun).map(([phase, duties]): MakingPole => {
    const charges = duties.flatMap(({ bounceCharge }) => bounceCharge ?? []);
    return {
      phase,
      meanCrest: mean(duties.map(({ crest }) => crest)),
      worstCrest: Math.max(...duties.map(({ crest }) => crest)),
      meanRms: mean(duties.map(({ rms }) => rms)),
      worstRms: Math.max(...duties.map(({ rms }) => rms)),
      meanBounceCharge: charges.length === duties.length ? mean(charges) : null,
    };
  });
  return { kind: 'making', ...about, runs: byRun.size, poles };
}

/** Which pole clears first, and when, repeats so often in a period of the supply. */
const OPENINGS_PER_PERIOD = 6;

/**
 * The runs' closing angles are spread evenly, but an opening that the run itself brings about (that of the zero-speed switch) comes at any
 * phase of the supply: each run counts for the share of phases that it stands for.
 */
function meanBreaking({ about, byRun }: Occasion<BreakingDuty>, frequency: number): MeanBreaking {
  const runs = [...byRun];
  const weights = phaseWeights(
    runs.map(([{ angle }, duties]) => {
      const parting = Math.min(...duties.map(({ t }) => t));
      return OPENINGS_PER_PERIOD * (frequency * parting + angle / (2 * Math.PI));
    }),
  );
  const weighted = (
    of: (duties: readonly BreakingDuty[]) => number,
    has = (_: readonly BreakingDuty[]) => true,
  ) => {
    let sum = 0;
    let whole = 0;
    for (const [i, [, duties]] of runs.entries()) {
      if (!has(duties)) continue;
      sum += weights[i]! * of(duties);
      whole += weights[i]!;
    }
    return sum / whole;
  };
  const poles = poleLists(byRun).map(([phase, all]): BreakingPole => {
    const own = (duties: readonly BreakingDuty[]) => duties.filter((duty) => duty.phase === phase);
    const meanOf = (read: (duty: BreakingDuty) => number) =>
      weighted(
        (duties) => mean(own(duties).map(read)),
        (duties) => own(duties).length > 0,
      );
    return {
      phase,
      meanCurrent: meanOf(({ current }) => current),
      worstCurrent: Math.max(...all.map(({ current }) => current)),
      meanArcCharge: meanOf(({ arcCharge }) => arcCharge),
      worstArcCharge: Math.max(...all.map(({ arcCharge }) => arcCharge)),
    };
  });
  const arcs = runs.some(([, duties]) => duties.some(({ t, clears }) => clears > t));
  const meanArcCharge = weighted((duties) => duties.reduce((sum, { arcCharge }) => sum + arcCharge, 0));
  return {
    kind: 'breaking',
    ...about,
    runs: byRun.size,
    poles,
    meanArcCharge,
    equivalentCurrent: arcs ? equivalentBreakingCurrent(meanArcCharge, frequency) : null,
    meanRecoveryVoltage: weighted((duties) => mean(duties.map((duty) => duty.recoveryVoltage))),
  };
}

function poleLists<T extends PoleDuty>(byRun: ReadonlyMap<DutiesOfRun, readonly T[]>): [PhaseName, T[]][] {
  const all = [...byRun.values()].flat();
  return (['A', 'B', 'C'] as const)
    .map((phase): [PhaseName, T[]] => [phase, all.filter((duty) => duty.phase === phase)])
    .filter(([, duties]) => duties.length > 0);
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
