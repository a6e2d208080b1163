import type { SchemeName } from '../scenario/scenario.ts';
import type { FaultVerdict, InterlockReport, Verdict } from '../starter/interlocks/checkInterlocks.ts';
import type { Counterexample } from '../starter/interlocks/describePath.ts';
import { PROPERTIES, type PropertyId } from '../starter/interlocks/property.ts';
import { faultWords } from './faultWords.ts';

const BRAKING: readonly SchemeName[] = ['plugStop', 'plugStopBoth', 'jog'];

/** A verdict in one or two words. */
export const VERDICT_WORDS: Readonly<Record<Verdict['kind'], string>> = {
  holds: 'holds',
  dependsOnSpeed: 'depends on speed',
  broken: 'BROKEN',
  doesNotApply: 'does not apply',
};

/** The sentence that a property is. */
export function propertyTitle(id: PropertyId): string {
  return PROPERTIES.find((property) => property.id === id)!.title;
}

/** What distinguishes the starter: relays, category, timer, interlocks. */
export function formWords({ control, lockout }: InterlockReport): string {
  const relay = control.scheme === 'plugStop' ? 'memory relay' : 'memory relays';
  const has = [
    ...(control.memoryRelay
      ? [`with ${relay}`]
      : BRAKING.includes(control.scheme)
        ? [`without ${relay}`]
        : []),
    control.readyRelay ? 'with ready relay' : 'without ready relay',
    ...(lockout ? ['zero-speed switch with lockout'] : []),
    ...(control.changeoverTimer > 0 ? ['with change-over timer'] : []),
    control.mechanicalInterlock ? 'mechanical interlock' : 'no mechanical interlock',
    `emergency stop of category ${control.emergencyStop.category}`,
  ];
  return has.join(', ');
}

/** The outcome in one sentence. */
export function outcomeSentence({ verdicts }: InterlockReport): string {
  const count = (kind: Verdict['kind']) => verdicts.filter(({ verdict }) => verdict.kind === kind).length;
  const applicable = verdicts.length - count('doesNotApply');
  const broken = count('broken');
  const speed = count('dependsOnSpeed');
  const aside = speed === 0 ? '' : `, ${speed} of them as long as the speed is slower than the devices`;
  if (broken === 0) return `All ${applicable} properties that apply hold${aside}.`;
  return `${broken} of ${applicable} properties that apply ${broken === 1 ? 'is' : 'are'} broken.`;
}

/** What a fault breaks, as titles of properties; what cannot be said of it comes in words of its own. */
export function faultBreaks({ fault, breaks }: FaultVerdict): readonly string[] {
  const titles = breaks.map(({ property }) => propertyTitle(property));
  if (fault.kind !== 'overloadNeverTrips') return titles;
  return [...titles, `says nothing of: ${propertyTitle('overloadDropsBoth')} (it never trips)`];
}

/** A fault as the beginning of a line. */
export function faultTitle({ fault }: FaultVerdict): string {
  const words = faultWords(fault);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** The counterexample of a verdict that has one. */
export function counterexampleOf(verdict: Verdict): Counterexample | null {
  return 'counterexample' in verdict ? verdict.counterexample : null;
}

/** What is taken for granted: the same for every starter. */
export const ASSUMPTIONS: readonly string[] = [
  'Every state is explored that can be reached from a dead installation at rest. Devices move in any order and the speed at any time; hands, trips, timers and the supply act when every device has come to rest, for a hand is slower than a relay. At most two buttons are pressed at once.',
  'Times are left out. While devices move the speed crosses one threshold of the zero-speed switch at most; "depends on speed" marks what holds on that condition alone, with what happens on a machine that is faster. Whether yours is, a simulation shows.',
  'The properties say what must not happen. Whether a faulty starter still starts and brakes is not among them, nor are poles and their arcs.',
];

/** What belongs to one starter: how it is controlled, and what the standard asks. */
export function remarksOn({ control }: InterlockReport): readonly string[] {
  return [
    ...(control.scanTime > 0
      ? ['The control is programmed; it is checked as if it were wired, its scan time left out.']
      : []),
    ...(BRAKING.includes(control.scheme)
      ? [
          'IEC 60204-1 on reverse-current braking (quoted from memory): the machine must not start in the other direction, a device that works only on time is not permitted, turning the shaft by hand must not start the machine.',
        ]
      : []),
  ];
}
