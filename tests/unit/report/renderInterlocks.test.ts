import { describe, expect, it } from 'vitest';
import { displayWidth } from '../../../src/report/displayWidth.ts';
import { renderInterlocks } from '../../../src/report/renderInterlocks.ts';
import { type InterlocksFile, renderInterlocksJson } from '../../../src/report/renderInterlocksJson.ts';
import type { ControlData } from '../../../src/scenario/scenario.ts';
import { controlCircuit } from '../../../src/starter/control/schemes.ts';
import { checkCircuit, everyPropertyHolds } from '../../../src/starter/interlocks/checkInterlocks.ts';
import { PLAIN_CONTROLS } from '../../../src/starter/interlocks/plainAndImproved.ts';
import { PROPERTIES } from '../../../src/starter/interlocks/property.ts';

function check(stated: Partial<ControlData> & Pick<ControlData, 'scheme'>) {
  const control = { ...PLAIN_CONTROLS[0]!, ...stated };
  return checkCircuit(controlCircuit(control, false), control, false);
}

const plain = check({ scheme: 'plugStop' });
const improved = check({ scheme: 'plugStop', memoryRelay: true, readyRelay: true });
const text = (reports: readonly (typeof plain)[], longSteps = false, colour = false) =>
  renderInterlocks(reports, { colour, longSteps });
/** Lines joined, so that a sentence is found however it wraps. */
const flat = (lines: string) => lines.replace(/\s+/gu, ' ');

describe('the check in the terminal', () => {
  it('says first what the circuit is and how many properties are broken', () => {
    const [title, form] = text([plain]).split('\n');
    expect(title).toBe('Plug to stop, one direction');
    expect(form).toMatch(/^without memory relay, without ready relay/u);
    expect(flat(text([plain]))).toContain('5 of 11 properties that apply are broken.');
    expect(flat(text([improved]))).toContain(
      'All 11 properties that apply hold, 2 of them as long as the speed is slower than the devices.',
    );
  });

  it('names every property with its verdict, and why one does not apply', () => {
    const lines = flat(text([plain]));
    for (const { title } of PROPERTIES) expect(lines).toContain(title);
    expect(lines).toContain('BROKEN Turning the shaft starts nothing');
    expect(lines).toContain('holds Stop ends running');
    expect(lines).toContain('does not apply The change-over time is kept there is no change-over timer');
    expect(flat(text([improved]))).toContain('depends on speed Braking ends with the zero-speed switch');
  });

  it('tells a counterexample in one sentence, or one step to a line', () => {
    const story =
      'supply switched on; shaft turned by hand or load: forward speed rises above pick-up; zero-speed switch (forward) picks up; ' +
      'then the coil of the reverse contactor is energised.';
    expect(flat(text([plain]))).toContain(story);
    const long = flat(text([plain], true));
    expect(long).toContain(
      '1 supply switched on 2 shaft turned by hand or load: forward speed rises above pick-up 3 zero-speed switch (forward) picks ' +
        'up then the coil of the reverse contactor is energised',
    );
  });

  it('lists what each fault breaks, and together those that break nothing', () => {
    const lines = flat(text([improved]));
    expect(lines).toContain(
      'The zero-speed switch is stuck closed: once actuated its contacts stay so - Braking ends with the zero-speed switch',
    );
    const harmless = lines.slice(lines.indexOf('Nothing else is broken by:'));
    expect(harmless).toContain('The mechanical interlock is missing');
    expect(harmless).not.toContain('stuck closed: once');
  });

  it('says that a relay that never trips proves nothing about tripping', () => {
    expect(flat(text([plain]))).toContain(
      'The overload relay never trips, however hot - says nothing of: A tripped overload relay drops both contactors (it never trips)',
    );
  });

  it('prints how many states were explored: healthy, with faults, in all', () => {
    const lines = flat(text([plain, improved]));
    expect(lines).toContain(`States explored: ${plain.states.healthy}`);
    expect(lines).toContain(
      `States explored with faults, and at any speed: ${improved.states.all - improved.states.healthy}`,
    );
    expect(lines).toContain(`States explored in all: ${plain.states.all + improved.states.all}.`);
  });

  it('says that times are left out, and of a programmed control that it is checked as if it were wired', () => {
    expect(flat(text([plain]))).toContain('Times are left out.');
    expect(flat(text([plain]))).not.toContain('programmed');
    expect(flat(text([check({ scheme: 'direct', scanTime: 0.01 })]))).toContain(
      'The control is programmed; it is checked as if it were wired, its scan time left out.',
    );
  });

  it("gives the standard's reservation where a contactor brakes, and only there", () => {
    expect(flat(text([plain]))).toContain('IEC 60204-1');
    expect(flat(text([check({ scheme: 'direct' })]))).not.toContain('IEC 60204-1');
  });

  it('keeps within 80 columns, is plain ASCII, and is bold only where that is welcome', () => {
    for (const longSteps of [false, true])
      for (const line of text([plain, improved], longSteps).split('\n'))
        expect(displayWidth(line)).toBeLessThanOrEqual(80);
    expect(text([plain, improved])).toMatch(/^[\n -~]*$/u);
    expect(text([plain], false, true)).toContain('\u001B[1m');
  });
});

describe('the check as JSON', () => {
  it('holds every verdict with its counterexample and every fault with what it breaks', () => {
    const file: InterlocksFile = JSON.parse(renderInterlocksJson([plain, improved], { version: '1.2.3' }));
    expect(file.interlocksVersion).toBe(1);
    expect(file.program).toEqual({ name: 'countertorque', version: '1.2.3' });
    expect(file.starters).toEqual([plain, improved]);
    expect(file.properties.map(({ id }) => id)).toEqual(PROPERTIES.map(({ id }) => id));
  });
});

describe('a starter passes', () => {
  it('when nothing that applies is broken, also where a verdict depends on the speed', () => {
    expect(everyPropertyHolds(improved)).toBe(true);
    expect(everyPropertyHolds(plain)).toBe(false);
  });
});
