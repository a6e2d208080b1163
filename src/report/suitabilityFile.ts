import type { Criterion } from '../assess/criterion.ts';
import type { DutyType } from '../assess/heat/dutyType.ts';
import type { NodeName, ThermalParameter } from '../assess/heat/thermalNetwork.ts';
import type { FailureConsequences } from '../assess/stop/failureConsequences.ts';
import type { Verdict } from '../assess/verdict.ts';
import type { CountRange, DateRange } from '../assess/wear/contactWearTypes.ts';
import type { MetricKey } from '../measure/metric.ts';
import type { CycleName, Scenario } from '../scenario/scenario.ts';
import type { RunStatus } from '../simulate/status.ts';
import type { ContactorName } from '../starter/starter.ts';
import type { Alternative, StopName } from '../survey/alternatives/alternative.ts';
import type { ExtremeName } from '../survey/inverse/extreme.ts';
import type { SummaryMetric } from './summaryFile.ts';

/** Version of the format below. Additions keep it; a change of meaning or a removal raises it. */
export const SUITABILITY_VERSION = 1;

/**
 * What `suitability --json` prints. All values are SI, temperatures °C, angles rad, times s. There is no NaN and no infinity in
 * it: a number that does not exist is null, and `missing` beside it says why.
 */
export interface SuitabilityFile {
  /** Version of this format. */
  readonly suitabilityVersion: typeof SUITABILITY_VERSION;
  /** The program that made the file. */
  readonly program: { readonly name: 'countertorque'; readonly version: string };
  /** Everything that determined the judgement, title block included; judging it again gives the same figures. */
  readonly scenario: Scenario;
  /** How the run ended; `successful` is false when its figures must not be used as they stand. */
  readonly status: RunStatus & { readonly successful: boolean };
  readonly verdict: Verdict;
  /** In the order of presentation. */
  readonly criteria: readonly FileCriterion[];
  /** One entry per metric of the run, as in `summary.json`. */
  readonly metrics: Readonly<Record<MetricKey, SummaryMetric>>;
  readonly heating: FileHeating;
  readonly wear: FileWear;
  /** The load stopped in other ways; empty where the run has no stop. */
  readonly alternatives: readonly FileAlternative[];
  /** Null: not asked for (`--extremes`). */
  readonly extremes: readonly FileExtreme[] | null;
  /** What happens where supply, contactor or switch fails; null: no plug or reversal takes place in the run. */
  readonly consequences: FailureConsequences | null;
  /** Things a reader must know about the run. */
  readonly warnings: readonly string[];
  readonly cautions: readonly string[];
}

/** A number, or why there is none. */
export interface FileNumber {
  readonly value: number | null;
  readonly unit: string;
  /** Why the value is null; null where it is not. */
  readonly missing: string | null;
}

/** A criterion; `value` is null where it could not be found, and then `missing` says why. */
export interface FileCriterion extends Criterion {
  readonly missing: string | null;
}

/** Heating and duty. */
export interface FileHeating {
  /** Why nothing of it could be worked out; null: it could. All else is null or empty then. */
  readonly missing: string | null;
  readonly cycle: CycleName | null;
  readonly dutyType: DutyType | null;
  /** Most operations per hour of each kind, and the body that then is at its limit, or time. */
  readonly permissible: Readonly<
    Record<CycleName, FileNumber & { readonly binding: NodeName | 'time' | null }>
  >;
  /** By the maker's starts without load, operations per hour. */
  readonly byNoLoadStarts: FileNumber;
  /** Operations right after one another from cold and from warm; null with `missing`: no end, or not known. */
  readonly inSuccession: { readonly cold: FileNumber; readonly warm: FileNumber };
  readonly bodies: readonly FileBody[];
  /** Share of the locked-rotor withstand that one operation uses, from cold and from hot. */
  readonly withstand: { readonly cold: FileNumber; readonly hot: FileNumber };
  /** What the thermal model stands on, with the origin of each value. */
  readonly parameters: readonly ThermalParameter[];
}

/** One body of the thermal model. */
export interface FileBody {
  readonly name: NodeName;
  /** Highest temperature in the periodic steady state of the duty, °C. */
  readonly peak: FileNumber;
  /** °C */
  readonly limit: FileNumber;
  /** Rises without cooling, K. */
  readonly startRise: number;
  readonly stopRise: number;
}

/** Wear of the contacts. */
export interface FileWear {
  /** Why nothing of it is known; null: it is. */
  readonly missing: string | null;
  /** The contactor whose contacts are to be replaced first; null: not known. */
  readonly governing: ContactorName | null;
  readonly contactors: Readonly<Record<ContactorName, FileContactor>> | null;
}

/** One contactor. */
export interface FileContactor {
  /** Operations of the duty until its contacts are to be replaced, and what of them is left. */
  readonly operations: CountRange | null;
  readonly operationsLeft: CountRange | null;
  readonly replacement: DateRange | null;
  readonly mechanicalOperations: number | null;
  readonly recommendedCategory: 'AC-3' | 'AC-4' | null;
  /** No life of this device is stated: a generic curve stands for it. */
  readonly generic: boolean;
  readonly breakings: readonly {
    readonly occasion: string;
    /** A r.m.s.; V r.m.s. line to line. */
    readonly current: number;
    readonly recoveryVoltage: number;
  }[];
  readonly missing: readonly string[];
  readonly remarks: readonly string[];
}

/** One way to stop the load. */
export interface FileAlternative {
  readonly name: StopName;
  /** What was set for it, in words. */
  readonly setting: string;
  /** Resistor per line, direct current or dead time that was set; null: nothing of the kind. */
  readonly chosen: Alternative['chosen'];
  /** What a reader must know of this way; may be empty. */
  readonly remark: string;
  /** From the command to rest, s, and turned meanwhile, rad. */
  readonly time: number | null;
  readonly angle: number | null;
  /** A crest; N·m; J. */
  readonly peakCurrent: number | null;
  readonly peakTorque: number | null;
  readonly couplingTorque: number | null;
  readonly rotorHeat: number | null;
  readonly statorHeat: number | null;
  /** 1/h, as the motor's temperatures and the time allow. */
  readonly operationsPerHour: number | null;
  /** Which of them sets that limit: a body of the motor, or `time`; null: not judged. */
  readonly binding: Alternative['cost']['binding'];
  /** Operations until the contacts that wear first are worn. */
  readonly contactLife: number | null;
  readonly wearsFirst: ContactorName | null;
  /** s; null: it does not reverse. */
  readonly reversalTime: number | null;
  /** Why it was not compared; null: it was. */
  readonly missing: string | null;
}

/** How far a quantity may go. */
export interface FileExtreme {
  readonly name: ExtremeName;
  readonly unit: string;
  readonly present: number | null;
  /** found: `value` is the last that passes; everything: all tried pass; nothing: none does; null: not answered. */
  readonly kind: 'found' | 'everything' | 'nothing' | null;
  readonly value: number | null;
  /** What fails beyond it. */
  readonly binding: readonly string[];
  readonly missing: string | null;
  /** What a reader must know; may be empty. */
  readonly remark: string;
}
