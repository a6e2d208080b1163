import type { RunResult } from '../../measure/result.ts';
import type { DutyData } from '../../scenario/scenario.ts';
import { TRIP_LEVEL } from '../../starter/overloadRelay.ts';
import { type Criterion, judged, notJudged } from '../criterion.ts';
import type { Heating } from './heating.ts';
import { NODE_WORDS } from './permissibleOperations.ts';
import type { NodeName } from './thermalNetwork.ts';

type Fixed = Pick<Criterion, 'key' | 'name' | 'unit' | 'limitIs'>;

const WINDING: Fixed = {
  key: 'windingTemperature',
  name: 'temperature of the stator winding',
  unit: '°C',
  limitIs: 'most',
};
const CAGE: Fixed = { key: 'cageTemperature', name: 'temperature of the cage', unit: '°C', limitIs: 'most' };
const RATE: Fixed = {
  key: 'operationsPerHour',
  name: 'permissible operations per hour',
  unit: '1/h',
  limitIs: 'least',
};
const WITHSTAND: Fixed = {
  key: 'lockedRotorWithstand',
  name: 'I²t of one operation over the locked-rotor withstand',
  unit: '1',
  limitIs: 'most',
};
const RELAY: Fixed = {
  key: 'overloadRelay',
  name: 'heat of the overload relay in the rhythm of the duty, over its trip level',
  unit: '1',
  limitIs: 'most',
};

/** The criteria of heat. */
export function heatCriteria(
  { scenario }: Pick<RunResult, 'scenario'>,
  found: Heating | string,
): Criterion[] {
  if (typeof found === 'string')
    return [WINDING, CAGE, RATE, WITHSTAND, RELAY].map((fixed) =>
      missingOf(fixed, found, fixed.key !== 'overloadRelay'),
    );
  const asked = scenario.duty?.operationsPerHour ?? null;
  return [
    temperature(WINDING, found, ['winding']),
    temperature(CAGE, found, ['cage', 'outerCage']),
    rate(found, asked, leftOut(scenario.duty)),
    withstand(found),
    relay(found),
  ];
}

/** What of a duty the permissible operations do not depend on. */
function leftOut(duty: DutyData | undefined): readonly string[] {
  if (duty === undefined) return [];
  const { cycle, runningTime, inchingShare } = duty;
  return [
    ...(inchingShare > 0 ? ['the heat of inching is not in it'] : []),
    ...(cycle === 'fullReversal' && runningTime !== null
      ? ['the running time is not used: a motor that is only reversed runs all the time in between']
      : []),
  ];
}

function missingOf(fixed: Fixed, why: string, required: boolean): Criterion {
  return notJudged({ ...fixed, value: null, limit: null, source: '', required }, why);
}

/** Of the hottest of several bodies in the periodic steady state of the duty. */
function temperature(fixed: Fixed, { model, atDuty }: Heating, names: readonly NodeName[]): Criterion {
  const nodes = model.nodes.flatMap((node, i) => (names.includes(node.name) ? [{ node, i }] : []));
  const unknown = nodes.find(({ node }) => node.limit === null);
  if (unknown !== undefined) return missingOf(fixed, unknown.node.limitSource, true);
  if (typeof atDuty === 'string') return missingOf(fixed, atDuty, true);
  const hottest = nodes.reduce((a, b) => (atDuty.peaks[b.i]! > atDuty.peaks[a.i]! ? b : a));
  return judged({
    ...fixed,
    value: atDuty.peaks[hottest.i]!,
    limit: hottest.node.limit,
    source: hottest.node.limitSource,
    remark:
      `highest in the periodic steady state, in the ${NODE_WORDS[hottest.node.name]}, phase ${atDuty.peakPhase[hottest.i]}` +
      assumptions(model.parameters.filter(({ origin }) => origin === 'assumed').length),
    required: true,
  });
}

function assumptions(count: number): string {
  return count === 0 ? '' : `; ${count} values of the thermal model are assumed`;
}

function rate(found: Heating, asked: number | null, left: readonly string[]): Criterion {
  const { model, kind, permissible, fromNoLoadStarts } = found;
  const required = asked !== null;
  if (asked === null) return missingOf(RATE, 'the number of operations per hour is missing', required);
  const byModel = permissible[kind];
  if (typeof byModel === 'string') return missingOf(RATE, byModel, required);
  const unknown = model.nodes.find(({ limit, limitSource }) => limit === null && limitSource !== '');
  if (unknown !== undefined) return missingOf(RATE, unknown.limitSource, required);
  const byMaker = fromNoLoadStarts !== null && typeof fromNoLoadStarts !== 'string' ? fromNoLoadStarts : null;
  const sentences = [
    `the thermal model permits ${byModel.perHour.toPrecision(3)} per hour (${bindingWords(byModel.binding)})`,
    ...(byModel.remark === '' ? [] : [byModel.remark]),
    ...left,
    ...(byMaker === null
      ? []
      : [
          `the maker’s starts without load permit ${byMaker.perHour.toPrecision(3)}; the ${byMaker.governs ? 'latter' : 'former'} counts`,
        ]),
  ];
  return judged({
    ...RATE,
    value: byMaker?.governs ? byMaker.perHour : byModel.perHour,
    limit: asked,
    source: 'the operations per hour of the duty',
    remark: sentences.join('; '),
    required,
  });
}

function bindingWords(binding: NodeName | 'time'): string {
  return binding === 'time'
    ? 'then the cycle has no rest left'
    : `then the ${NODE_WORDS[binding]} is at its limit`;
}

/** From hot, which is the smaller one, where that time is known. */
function withstand({ withstand: { cold, hot } }: Heating): Criterion {
  const use = hot ?? cold;
  if (use === null) return missingOf(WITHSTAND, 'the locked-rotor time is missing', true);
  return judged({
    ...WITHSTAND,
    value: use.share,
    limit: 1,
    source: `${use.time.value} s with locked rotor from ${use === hot ? 'hot' : 'cold'}: ${use.time.source}`,
    remark: '',
    required: true,
  });
}

function relay({ relay: use, atDuty }: Heating): Criterion {
  if (typeof use === 'string') return missingOf(RELAY, use, false);
  if (use.atDuty === null)
    return missingOf(RELAY, typeof atDuty === 'string' ? atDuty : 'the rhythm of the duty is missing', true);
  const { cold, warm } = use.atDuty;
  const words = (count: number) =>
    count === Number.POSITIVE_INFINITY ? 'never' : `after ${count} operations`;
  return judged({
    ...RELAY,
    value: cold.steadyPeak,
    limit: TRIP_LEVEL,
    source: `overload relay class ${use.tripClass} set at ${use.setting} A, first-order thermal memory (IEC 60255-149)`,
    remark: `trips ${words(cold.operations)} from cold, ${words(warm.operations)} from warm`,
    required: true,
  });
}
