import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { lossWords } from '../../../../src/scenario/edit/lossWords.ts';
import { lostWith } from '../../../../src/scenario/edit/lostWith.ts';
import type { ControlData, SchemeName } from '../../../../src/scenario/scenario.ts';
import { CIRCUITS, edited, example, SCHEMES } from './editing.ts';

/** What is said of a thing about the control circuit that does not come back. */
const WORDS: Partial<Record<keyof ControlData, string>> = {
  readyRelay: 'ready relay',
  emergencyStop: 'emergency stop of category 1',
  changeoverTimer: 'change-over timer',
  relayTime: 'time of the auxiliary relays',
  scanTime: 'scan time of the program',
  coilVoltage: 'voltages of the coils',
  mechanicalInterlock: 'that no mechanical interlock is fitted',
};

const EVERYTHING = edited(
  example('what-happens-after-the-stop-button'),
  { kind: 'control', option: { key: 'readyRelay', value: true } },
  { kind: 'control', option: { key: 'mechanicalInterlock', value: false } },
  { kind: 'control', option: { key: 'changeoverTimer', value: 0.08 } },
  { kind: 'control', option: { key: 'relayTime', value: 0.03 } },
  { kind: 'control', option: { key: 'scanTime', value: 0.02 } },
  { kind: 'control', option: { key: 'coilVoltage', value: true } },
  { kind: 'control', option: { key: 'emergencyStopLimit', value: 1.5 } },
);

const TEXTS = [
  ...CIRCUITS.map((name) => [name, example(name)] as const),
  ['one with everything', EVERYTHING] as const,
];

describe.each(TEXTS)('of %s', (_, text) => {
  const before = parseScenario(text);
  const own = before.starter.control?.scheme ?? null;
  const others = ([null, ...SCHEMES] as (SchemeName | null)[]).filter((scheme) => scheme !== own);

  it.each(others)('what does not come back after %s has been told, and nothing else', (scheme) => {
    const back = parseScenario(edited(text, { kind: 'scheme', scheme }, { kind: 'scheme', scheme: own }));
    const told = lostWith(before, scheme);
    const [is, was] = [back.starter.control, before.starter.control];
    if (is === undefined || was === undefined) return;
    for (const [key, words] of Object.entries(WORDS) as [keyof ControlData, string][]) {
      const isLost = JSON.stringify(is[key]) !== JSON.stringify(was[key]);
      expect([words, told.includes(words)]).toEqual([words, isLost]);
    }
  });

  it('faults that go are named', () => {
    const faults = [
      { kind: 'mechanicalInterlockMissing' },
      { kind: 'weldedContactor', contactor: 'forward' },
    ] as const;
    const starter = { ...before.starter, faults };
    expect(
      lostWith({ ...before, starter }, own === null ? 'direct' : null).includes('fault: welded contactor'),
    ).toBe(false);
    if (own !== null)
      expect(lostWith({ ...before, starter }, null)).toContain('fault: mechanical interlock missing');
  });
});

it('the scheme that is there takes nothing with it', () => {
  expect(lostWith(parseScenario(EVERYTHING), 'plugStop')).toEqual([]);
});

it('a stated dead time goes where a control circuit comes, and one that contactors make of themselves is none', () => {
  const stated = edited(example('may-this-belt-be-plugged'), { kind: 'adjust', key: 'deadTime', value: 0.2 });
  expect(lostWith(parseScenario(stated), 'direct')).toContain('dead time of the contacts');
  const none = stated.replace(/^ {2}(?:deadTime|changeoverDelay): .*\n/gmu, '');
  expect(lostWith(parseScenario(none), 'direct')).not.toContain('dead time of the contacts');
});

it('choices that take the same are told together', () => {
  const said = lossWords(parseScenario(example('what-happens-after-the-stop-button')));
  expect(said[0]).toMatch(
    /^Choosing “none” takes with it: memory relay, emergency stop of category 1, ready relay/u,
  );
  expect(
    said.find((one) => one.startsWith('Choosing “reversing through stop” or “reversing directly”')),
  ).toMatch(/takes with it: memory relay, emergency stop of category 1\.$/u);
  expect(said.join()).not.toContain('plug to stop both directions');
});
