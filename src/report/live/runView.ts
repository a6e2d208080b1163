import type { Outcome } from '../../assess/criterion.ts';
import type { VerdictOutcome } from '../../assess/verdict.ts';
import type { Scenario } from '../../scenario/scenario.ts';
import type { FigureSpec } from '../figureSpec.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import type { KeyNumber } from '../keyNumbers.ts';
import type { Film } from './film.ts';
import type { NumberGroup } from './numberRows.ts';
import type { Stretch } from './stretches.ts';

/** All that a page shows of one run, as plain data. */
export interface RunView extends RunPictures {
  /** What determined the run. */
  readonly scenario: Scenario;
  readonly units: UnitSystem;
  /** False: the figures must not be used as they stand; `alarms` says why. */
  readonly usable: boolean;
  /** What the run shows, in sentences. */
  readonly finding: string;
  /** What a reader must know first: how the run ended where it ended badly, what the control did, warnings. */
  readonly alarms: readonly string[];
  /** How the circuit was found where it was not given, a sentence each; what that leaves open is not in the numbers. */
  readonly estimated: readonly string[];
  readonly keyNumbers: readonly KeyNumber[];
  readonly numbers: readonly NumberGroup[];
  /** Parts of the run worth a picture of their own, with the names of their buttons. */
  readonly stretches: readonly Stretch[];
  /** Where to look first: the closing that plugs, else the start, s. */
  readonly focus: number;
}

/** What of a run is drawn. */
export interface RunPictures {
  /** Contacts, currents, torque, speed, voltage over the whole run, as waveforms. */
  readonly time: FigureSpec;
  /** The torque–speed plane. */
  readonly plane: FigureSpec;
  readonly film: Film;
}

/** Verdict in words, of one run alone or of all closing angles. */
export interface LiveVerdict {
  readonly outcome: VerdictOutcome;
  readonly sentence: string;
  readonly criteria: readonly LiveCriterion[];
}

/** One criterion in words. */
export interface LiveCriterion {
  readonly key: string;
  readonly name: string;
  readonly outcome: Outcome;
  /** "pass", "waived", "FAIL" … */
  readonly words: string;
  readonly value: string;
  readonly limit: string;
  readonly limitIs: 'most' | 'least';
  /** Why it is not judged, or what goes with it; may be empty. */
  readonly remark: string;
}
