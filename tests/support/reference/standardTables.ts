import { iecLockedRotorCurrent } from '../../../src/estimate/iecLockedRotorPower.ts';
import { iecTorques } from '../../../src/estimate/iecTorques.ts';
import { LOCKED_ROTOR_AMPERES } from '../../../src/estimate/nemaLockedRotorCurrent.ts';
import { nemaTorques } from '../../../src/estimate/nemaTorques.ts';
import { TOLERANCE } from '../../../src/estimate/tolerances.ts';
import { HORSEPOWER } from '../../../src/estimate/units.ts';
import { codeLetterRange } from '../../../src/scenario/codeLetter.ts';
import { typicalMagnetisingCurve } from '../../../src/scenario/defaults.ts';
import { codeLetters } from '../../../src/scenario/nameplateInput.ts';
import { overloadConstants } from '../../../src/starter/overloadRelay.ts';
import { markdownTable } from './markdownTable.ts';
import { type SourceNote, wordsAt } from './sourceRegister.ts';

/** A table of the trade as the code holds it. */
export interface TradeTable {
  readonly title: string;
  /** Source and certainty, from the comment beside the data. */
  readonly source: string;
  readonly table: string;
}

const POLES = [2, 4, 6, 8] as const;
/** Upper ends of the rows of IEC 60034-12, kW. */
const KILOWATTS = [0.63, 1, 1.6, 2.5, 4, 6.3, 10, 16, 25, 40, 63, 100, 160, 250, 400, 630];
const percent = (value: number) => `${Math.round(100 * value)} %`;

/** Every table, the values from the functions that use it. */
export function tradeTables(notes: readonly SourceNote[]): TradeTable[] {
  const from = (file: string, ...names: readonly string[]) =>
    [...new Set(names.map((name) => wordsAt(notes, file, name)))].join(' ');
  const nema = 'estimate/nemaTorques.ts';
  const iec = 'estimate/iecTorques.ts';
  return [
    {
      title: 'Locked-rotor current of NEMA designs B, C and D',
      source: from('estimate/nemaLockedRotorCurrent.ts', 'LOCKED_ROTOR_AMPERES'),
      table: markdownTable(
        ['hp', 'A at 230 V'],
        LOCKED_ROTOR_AMPERES.map(([hp, amperes]) => [`${hp}`, `${amperes}`]),
      ),
    },
    {
      title: 'Least torques of NEMA designs A and B',
      source: from(nema, 'LOCKED_ROTOR_AB', 'BREAKDOWN_AB'),
      table: nemaTable('B'),
    },
    {
      title: 'Least torques of NEMA design C',
      source: from(nema, 'LOCKED_ROTOR_C', 'BREAKDOWN_C'),
      table: nemaTable('C'),
    },
    { title: 'Least torques of NEMA design D', source: from(nema, 'DESIGN_D'), table: nemaTable('D') },
    { title: 'Least torques of IEC design N', source: from(iec, 'DESIGN_N'), table: iecTable('N') },
    { title: 'Least torques of IEC design H', source: from(iec, 'H'), table: iecTable('H') },
    {
      title: 'Highest locked-rotor apparent power of IEC designs N and H',
      source: from('estimate/iecLockedRotorPower.ts', 'APPARENT_POWER', 'E_VARIANT_FACTOR'),
      table: apparentPowers(),
    },
    {
      title: 'Code letters of NEMA MG 1',
      source: from('scenario/codeLetter.ts', 'limits'),
      table: markdownTable(
        ['letter', 'kVA per hp with the rotor locked'],
        codeLetters.map((letter) => {
          const { from: low, below } = codeLetterRange(letter)!;
          return [letter, Number.isFinite(below) ? `${low} to below ${below}` : `${low} and above`];
        }),
      ),
    },
    {
      title: "Tolerances: a machine's own value over that of its nameplate",
      source: from('estimate/tolerances.ts', 'TOLERANCE'),
      table: markdownTable(
        ['value', 'lowest', 'highest'],
        Object.entries(TOLERANCE).map(([name, [low, high]]) => [`\`${name}\``, `${low}`, `${high}`]),
      ),
    },
    {
      title: 'Overload relay',
      source: from('starter/overloadRelay.ts', 'TRIP_POINTS', 'LEAST_TRIPPING_MULTIPLE'),
      table: markdownTable(
        ['trip class', 'trips at, of the setting', 'time constant'],
        (['5', '10A', '10', '20', '30'] as const).map((tripClass) => {
          const { k, tau } = overloadConstants(tripClass);
          return [tripClass, `${k}`, `${Number(tau.toPrecision(3))} s`];
        }),
      ),
    },
    {
      title: 'Typical magnetising curve, of the no-load point at rated voltage',
      source: from('scenario/defaults.ts', 'typicalMagnetisingCurve'),
      table: markdownTable(
        ['flux', 'current'],
        typicalMagnetisingCurve.map(([flux, current]) => [`${flux}`, `${current}`]),
      ),
    },
  ];
}

/** Locked rotor / breakdown, of rated torque, by rating and number of poles; "—": the standard has no such motor. */
function nemaTable(design: 'B' | 'C' | 'D'): string {
  return markdownTable(
    ['hp', ...POLES.map((poles) => `${poles} poles`)],
    LOCKED_ROTOR_AMPERES.map(([hp]) => [
      `${hp}`,
      ...POLES.map((poles) => {
        const found = nemaTorques(design, hp * HORSEPOWER, poles);
        return found === null ? '—' : `${percent(found.lockedRotor)} / ${percent(found.breakdown)}`;
      }),
    ]).filter(([, ...cells]) => cells.some((cell) => cell !== '—')),
  );
}

/** Locked rotor / pull-up / breakdown. */
function iecTable(design: 'N' | 'H'): string {
  const digits = (value: number) => `${Number(value.toPrecision(3))}`;
  return markdownTable(
    ['up to kW', ...POLES.map((poles) => `${poles} poles`)],
    KILOWATTS.map((kilowatts) => [
      `${kilowatts}`,
      ...POLES.map((poles) => {
        const found = iecTorques(design, 1000 * kilowatts, poles);
        if (found === null) return '—';
        return [found.lockedRotor, found.pullUp, found.breakdown].map(digits).join(' / ');
      }),
    ]).filter(([, ...cells]) => cells.some((cell) => cell !== '—')),
  );
}

function apparentPowers(): string {
  const ratio = (kilowatts: number) =>
    (iecLockedRotorCurrent(1000 * kilowatts, 400)! * Math.sqrt(3) * 400) / (1000 * kilowatts);
  return markdownTable(
    ['up to kW', 'kVA/kW'],
    [6.3, 25, 100, 1600].map((kilowatts) => [`${kilowatts}`, `${Number(ratio(kilowatts).toPrecision(6))}`]),
  );
}
