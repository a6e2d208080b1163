import type { Criterion } from '../assess/criterion.ts';
import type { Heating } from '../assess/heat/heating.ts';
import type { ThermalNode } from '../assess/heat/thermalNetwork.ts';
import type { WithstandShare } from '../assess/protection/withstandUse.ts';
import type { ContactorWear, ContactWear } from '../assess/wear/contactWearTypes.ts';
import type { CycleName } from '../scenario/scenario.ts';
import type { Alternative } from '../survey/alternatives/alternative.ts';
import type { Extreme } from '../survey/inverse/extreme.ts';
import { CAUTIONS } from './cautions.ts';
import { genericLifeCautions } from './contactLives.ts';
import type { JudgedRun } from './judgedRun.ts';
import { summaryMetrics } from './renderSummaryJson.ts';
import {
  type FileAlternative,
  type FileBody,
  type FileContactor,
  type FileCriterion,
  type FileExtreme,
  type FileHeating,
  type FileNumber,
  type FileWear,
  SUITABILITY_VERSION,
  type SuitabilityFile,
} from './suitabilityFile.ts';

/**
 * A judgement as JSON text, ending in a line break; the format is documented at `SuitabilityFile`.
 *
 * @param options `version` of the program, written into the file
 */
export function renderSuitabilityJson(judged: JudgedRun, options: { readonly version: string }): string {
  return `${JSON.stringify(suitabilityFileOf(judged, options.version), null, 2)}\n`;
}

/** A judgement as data. */
export function suitabilityFileOf(judged: JudgedRun, version: string): SuitabilityFile {
  const { result, suitability, alternatives, extremes } = judged;
  const { verdict, criteria, heating, wear, consequences } = suitability;
  return {
    suitabilityVersion: SUITABILITY_VERSION,
    program: { name: 'countertorque', version },
    scenario: result.scenario,
    status: { ...result.status, successful: result.usable },
    verdict,
    criteria: criteria.map(fileCriterion),
    metrics: summaryMetrics(result.metrics),
    heating: heatingOf(heating),
    wear: wearOf(wear),
    alternatives: alternatives.map(alternativeOf),
    extremes: extremes?.map(extremeOf) ?? null,
    consequences,
    warnings: result.warnings,
    cautions: [...genericLifeCautions(suitability), ...verdict.reservations, ...CAUTIONS],
  };
}

const UNBOUNDED = 'it grows without bound';

function numberOf(value: number | null, unit: string, missing: string): FileNumber {
  if (value === null || Number.isNaN(value)) return { value: null, unit, missing };
  return Number.isFinite(value) ? { value, unit, missing: null } : { value: null, unit, missing: UNBOUNDED };
}

function finite(value: number | null): number | null {
  return value !== null && Number.isFinite(value) ? value : null;
}

/** A criterion with every field present and no infinity in it. */
export function fileCriterion(criterion: Criterion): FileCriterion {
  const { value, limit, margin, unit, remark } = criterion;
  const shown = numberOf(value, unit, remark === '' ? criterion.source : remark);
  return {
    ...criterion,
    value: shown.value,
    limit: finite(limit),
    margin: finite(margin),
    missing: shown.missing,
  };
}

function heatingOf(heating: Heating | string): FileHeating {
  if (typeof heating === 'string') {
    const none = (unit: string): FileNumber => ({ value: null, unit, missing: heating });
    const rate = { ...none('1/h'), binding: null };
    return {
      missing: heating,
      cycle: null,
      dutyType: null,
      permissible: { startCoast: rate, startPlugStop: rate, fullReversal: rate },
      byNoLoadStarts: none('1/h'),
      inSuccession: { cold: none('1'), warm: none('1') },
      bodies: [],
      withstand: { cold: none('1'), hot: none('1') },
      parameters: [],
    };
  }
  const { kind, dutyType, permissible, fromNoLoadStarts, inSuccession, withstand, model } = heating;
  const rate = (cycle: CycleName) => {
    const found = permissible[cycle];
    return typeof found === 'string'
      ? { ...numberOf(null, '1/h', found), binding: null }
      : { ...numberOf(found.perHour, '1/h', ''), binding: found.binding };
  };
  const many = (from: 'cold' | 'warm') =>
    typeof inSuccession === 'string'
      ? numberOf(null, '1', inSuccession)
      : Number.isFinite(inSuccession[from])
        ? numberOf(inSuccession[from], '1', '')
        : numberOf(null, '1', 'there is no end: the operations never become too hot');
  return {
    missing: null,
    cycle: kind,
    dutyType,
    permissible: {
      startCoast: rate('startCoast'),
      startPlugStop: rate('startPlugStop'),
      fullReversal: rate('fullReversal'),
    },
    byNoLoadStarts:
      fromNoLoadStarts === null
        ? numberOf(null, '1/h', 'the starts without load are not stated')
        : typeof fromNoLoadStarts === 'string'
          ? numberOf(null, '1/h', fromNoLoadStarts)
          : numberOf(fromNoLoadStarts.perHour, '1/h', ''),
    inSuccession: { cold: many('cold'), warm: many('warm') },
    bodies: model.nodes.map((node, i) => bodyOf(heating, node, i)),
    withstand: { cold: shareOf(withstand.cold), hot: shareOf(withstand.hot) },
    parameters: model.parameters,
  };
}

function bodyOf({ atDuty, rises }: Heating, { name, limit, limitSource }: ThermalNode, i: number): FileBody {
  return {
    name,
    peak:
      typeof atDuty === 'string' ? numberOf(null, '°C', atDuty) : numberOf(atDuty.peaks[i] ?? null, '°C', ''),
    limit: numberOf(limit, '°C', limitSource === '' ? 'this body needs none' : limitSource),
    startRise: rises.start[i] ?? 0,
    stopRise: rises.stop[i] ?? 0,
  };
}

function shareOf(share: WithstandShare | null): FileNumber {
  return numberOf(share?.share ?? null, '1', 'that locked-rotor time is not stated');
}

function wearOf(wear: ContactWear | null): FileWear {
  if (wear === null)
    return {
      missing: 'the section contactors is missing, or no run ended well',
      governing: null,
      contactors: null,
    };
  return {
    missing: null,
    governing: wear.governing,
    contactors: { forward: contactorOf(wear.forward), reverse: contactorOf(wear.reverse) },
  };
}

function contactorOf(contactor: ContactorWear): FileContactor {
  const { operations, operationsLeft, replacement, mechanicalOperations, recommendedCategory } = contactor;
  return {
    operations,
    operationsLeft,
    replacement,
    mechanicalOperations,
    recommendedCategory,
    generic: contactor.basis.generic,
    breakings: contactor.breakings.map(({ occasion, current, recoveryVoltage }) => ({
      occasion,
      current,
      recoveryVoltage,
    })),
    missing: contactor.missing,
    remarks: contactor.remarks,
  };
}

function alternativeOf({
  name,
  setting,
  chosen,
  remark,
  figures,
  cost,
  reversalTime,
  missing,
}: Alternative): FileAlternative {
  return {
    name,
    setting,
    chosen,
    remark,
    time: figures?.time ?? null,
    angle: figures?.angle ?? null,
    peakCurrent: figures?.peakCurrent ?? null,
    peakTorque: figures?.peakTorque ?? null,
    couplingTorque: figures?.couplingTorque ?? null,
    rotorHeat: figures?.rotorHeat ?? null,
    statorHeat: figures?.statorHeat ?? null,
    operationsPerHour: finite(cost.operationsPerHour),
    binding: cost.binding,
    contactLife: finite(cost.contactLife),
    wearsFirst: cost.wearsFirst,
    reversalTime,
    missing,
  };
}

function extremeOf({ name, unit, present, boundary, missing, remark }: Extreme): FileExtreme {
  return {
    name,
    unit,
    present,
    kind: boundary?.kind ?? null,
    value: boundary?.value ?? null,
    binding: boundary?.binding ?? [],
    missing,
    remark,
  };
}
