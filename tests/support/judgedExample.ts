import { shortRun } from './shortRun.ts';

/** Sections with which the plugged belt of the examples is suitable; each test changes what it is about. */
const SECTIONS = `
titleBlock: { plant: Tea loft, tag: M-7, revision: A, date: 2026-03-14 }
thermal: { insulationClass: 155 (F), lockedRotorTimeHot: 12 s, lockedRotorTimeCold: 20 s }
duty:
  cycle: start and plug stop
  operationsPerHour: 10
  runningTime: 25 s
  operationsPerDay: 100
  contactsChanged: 2025-09-01
contactors: { ratedCurrentAc3: 80 A, ratedCurrentAc4: 55 A, lifeAc3: 1.5e6, lifeAc4: 2e5, bounceTime: 2 ms }
limits: { couplingTorque: 1200 N m, contactLife: 150000, stopTime: 1.2 s }
`;

/** A quick scenario that is suitable, with pieces replaced; every piece must be there. */
export function suitableText(...edits: readonly (readonly [string, string])[]): string {
  return edits.reduce(
    (text, [before, after]) => {
      if (!text.includes(before)) throw new Error(`the scenario has no "${before}"`);
      return text.replace(before, () => after);
    },
    `${shortRun()}${SECTIONS}`,
  );
}
