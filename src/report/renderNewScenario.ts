import { stringify } from 'yaml';
import type { Origin } from '../scenario/origin.ts';
import type { NewScenarioKey, SufficientAnswers } from './newScenarioAnswers.ts';
import { type NewScenarioAssumptions, newScenarioAssumptions } from './newScenarioAssumptions.ts';

/** Efficiency of a gear of which only the ratio is known: one or two stages of gear wheels. Common practice, no source. */
const ASSUMED_GEAR_EFFICIENCY = '95 %';
/** When plugging begins where it does so from steady running: late enough to see the running before it. */
const PLUG_FROM_RUNNING = '0.1 s';

/** Keys of the nameplate section after the power, with what each of them is. */
const NAMEPLATE_KEYS: readonly (readonly [NewScenarioKey, string])[] = [
  ['speed', 'at rated output'],
  ['current', 'line current at rated output'],
  ['powerFactor', 'at rated output'],
  ['efficiency', 'at rated output'],
  ['lockedRotorCurrent', 'rotor held, rated voltage: times rated current, or amperes'],
  ['lockedRotorTorque', 'rotor held: times rated torque'],
  ['breakdownTorque', 'the largest torque: times rated torque'],
  ['design', 'design letter of NEMA MG 1 or IEC 60034-12'],
];

/**
 * Writes a scenario file with a comment on every line. What is not known is left out of the nameplate, and a comment says
 * what the program takes in its place.
 *
 * @param answers valid each by itself, with a speed or a number of poles
 * @param taken origins of the same scenario once it was read (empty at first): where the replacements stand
 * @returns YAML that ends with a line break
 */
export function renderNewScenario(answers: SufficientAnswers, taken: readonly Origin[]): string {
  const assumptions = newScenarioAssumptions(answers);
  return `${[
    '# What is marked ASSUMED or "not known" nobody has stated: put the real value there as soon as you have it.',
    '# Every number has its unit. Lines that begin with # are comments.',
    line('title', answers.title ?? `Plugging a ${answers.power} motor`, 'stands on the report'),
    '',
    ...supplyLines(answers),
    '',
    ...machineLines(answers, replacements(taken)),
    '',
    ...loadLines(answers, assumptions),
    '',
    ...starterLines(answers, assumptions, replacements(taken)),
    '',
    ...actionLines(answers),
  ].join('\n')}\n`;
}

/** The comment that stands in place of a key. */
type Unknown = (path: string, instead?: string) => string;

function replacements(taken: readonly Origin[]): Unknown {
  return (path, instead) => {
    const key = path.slice(path.lastIndexOf('.') + 1);
    const origin = taken.find((entry) => entry.path === path);
    if (origin === undefined) return `# ${key}: not known${instead === undefined ? '' : `; ${instead}`}`;
    const source = origin.source ?? origin.origin;
    return `# ${key}: not known; the program takes ${origin.value} (${source})`;
  };
}

function supplyLines(answers: SufficientAnswers): string[] {
  return [
    'supply:',
    `  ${line('lineVoltage', answers.voltage, 'between lines, r.m.s.')}`,
    `  ${line('frequency', answers.frequency, '')}`,
    '  # shortCircuitPower: not asked; without it the supply does not dip, and peaks are the highest possible',
  ];
}

function machineLines(answers: SufficientAnswers, unknown: Unknown): string[] {
  const known = (key: NewScenarioKey, path: string, about: string) => {
    const answer = answers[key];
    return answer === undefined ? unknown(`${path}${key}`) : line(key, answer, about);
  };
  return [
    'machine:',
    `  ${known('poles', 'machine.', 'number of poles')}`,
    `  ${known('connection', 'machine.', 'of the stator winding at this voltage')}`,
    '  nameplate: # the circuit is estimated from it',
    `    ${line('power', answers.power, 'at the shaft')}`,
    ...NAMEPLATE_KEYS.map(([key, about]) => `    ${known(key, 'machine.nameplate.', about)}`),
    answers.inertia === undefined
      ? `    ${unknown('machine.inertia')}`
      : `    ${line('inertia', answers.inertia, 'of the rotor alone')}`,
    ...(answers.codeLetter === undefined
      ? []
      : [`    ${line('codeLetter', answers.codeLetter, 'NEMA MG 1: locked-rotor kVA per hp')}`]),
  ];
}

function loadLines(answers: SufficientAnswers, assumptions: NewScenarioAssumptions): string[] {
  const { loadInertia, gearRatio, gearEfficiency } = answers;
  const where = gearRatio === undefined ? 'at the motor shaft' : "at the load's own shaft";
  return [
    'load:',
    ...(gearRatio === undefined
      ? []
      : [
          '  gear:',
          `    ${line('ratio', gearRatio, 'motor speed over load speed')}`,
          gearEfficiency === undefined
            ? `    ${line('efficiency', ASSUMED_GEAR_EFFICIENCY, 'ASSUMED: gear wheels, one or two stages')}`
            : `    ${line('efficiency', gearEfficiency, 'while the motor drives the load')}`,
        ]),
    loadInertia === undefined
      ? `  ${line('inertia', assumptions.loadInertia.text, `ASSUMED, not known: ${assumptions.loadInertia.source}`)}`
      : `  ${line('inertia', loadInertia, `of everything driven, ${where}`)}`,
    ...torqueLines(answers, assumptions),
  ];
}

function torqueLines(answers: SufficientAnswers, { fanSpeed, friction }: NewScenarioAssumptions): string[] {
  const torque = `torque: ${scalar(answers.loadTorque ?? '0 N m')}`;
  switch (answers.load) {
    case 'friction':
      return [`  torque: { kind: friction, ${torque} } # opposes motion both ways and holds at rest`];
    case 'hoist':
      return [`  torque: { kind: gravity, ${torque} } # a hoist: positive pulls against forward rotation`];
    case 'fan': {
      const at = scalar(answers.loadSpeed ?? fanSpeed);
      const about = answers.loadSpeed === undefined ? '; atSpeed ASSUMED' : '';
      return [`  torque: { kind: fan, ${torque}, atSpeed: ${at} } # grows with the square of speed${about}`];
    }
    case 'none':
      return ['  torque: none # nothing but inertia'];
    default:
      return [
        `  torque: { kind: friction, torque: ${friction} } # ASSUMED, not known: 5 % of rated torque; or fan, gravity, none …`,
      ];
  }
}

function starterLines(
  answers: SufficientAnswers,
  { dropOutSpeed, pickUpSpeed }: NewScenarioAssumptions,
  unknown: Unknown,
): string[] {
  const time = (key: 'closingTime' | 'openingTime', about: string) => {
    const answer = answers[key];
    return answer === undefined ? unknown(`starter.${key}`) : line(key, answer, about);
  };
  const { switchOffSpeed, deadTime } = answers;
  return [
    'starter:',
    `  ${time('closingTime', 'coil on to contacts touching')}`,
    `  ${time('openingTime', 'coil off to contacts parting')}`,
    deadTime === undefined
      ? `  ${unknown('starter.changeoverDelay', 'or deadTime, contacts parting to contacts touching')}`
      : `  ${line('deadTime', deadTime, 'contacts parting to contacts touching')}`,
    ...(switchOffSpeed === 'off'
      ? ['  zeroSpeedSwitch: off # none: plugging runs on into full reversal']
      : [
          '  zeroSpeedSwitch: # ends plugging near standstill',
          `    ${line(
            'dropOutSpeed',
            switchOffSpeed ?? dropOutSpeed,
            switchOffSpeed === undefined
              ? 'ASSUMED, not known: 4 % of synchronous speed'
              : 'its contact opens below this',
          )}`,
          `    ${line('pickUpSpeed', pickUpSpeed, 'ASSUMED: twice the drop-out speed; its contact closes above this')}`,
        ]),
  ];
}

function actionLines({ plugAt }: SufficientAnswers): string[] {
  if (plugAt !== undefined)
    return [
      'actions:',
      '  - { at: 0 s, do: start forward }',
      `  - { at: ${scalar(plugAt)}, do: plug } # later than the run-up takes`,
    ];
  return [
    'initial: running forward # the run begins in steady running; for the run-up as well: rest',
    'actions:',
    '  # - { at: 0 s, do: start forward } # with initial: rest; plug then later than the run-up takes',
    `  - { at: ${PLUG_FROM_RUNNING}, do: plug }`,
  ];
}

function line(key: string, value: string | number, comment: string): string {
  return `${key}: ${scalar(value)}${comment === '' ? '' : ` # ${comment}`}`;
}

/** A value on one line, quoted where YAML needs it, inside braces too. */
function scalar(value: string | number): string {
  const list = stringify([value], { collectionStyle: 'flow', blockQuote: false, lineWidth: 0 });
  return list.slice(list.indexOf('[') + 1, list.lastIndexOf(']')).trim();
}
