import { describe, expect, it } from 'vitest';
import { parseScenario } from '../../../../src/estimate/parseScenario.ts';
import { applyEdits } from '../../../../src/scenario/edit/applyEdits.ts';
import {
  FAULT_KINDS,
  faultFields,
  newFault,
  whyNoFault,
  withFaultField,
} from '../../../../src/scenario/edit/faultFields.ts';
import { offsetOfPlace, placeWords, saveName } from '../../../../src/scenario/edit/placeWords.ts';
import { readField } from '../../../../src/scenario/edit/readField.ts';
import { MOST_BYTES, textOfFile } from '../../../../src/scenario/edit/textOfFile.ts';
import { exampleText as example } from '../../../support/examples.ts';

describe('a fault to choose', () => {
  const text = example('what-happens-after-the-stop-button');
  const scenario = parseScenario(text);

  it.each(FAULT_KINDS)('can be had with every one of its choices: %s', (kind) => {
    const first = newFault(kind);
    expect(whyNoFault(scenario, first)).toBeNull();
    for (const field of faultFields(first)) {
      const values = field.kind === 'choice' ? Object.keys(field.options) : [2.5];
      for (const value of values) {
        const fault = withFaultField(first, field.name, value);
        expect(fault).toEqual({ ...first, [field.name]: value });
        if (whyNoFault(scenario, fault) !== null) continue;
        const done = applyEdits(text, [{ kind: 'faults', faults: [fault] }]);
        expect(parseScenario(done.text).starter.faults).toEqual([fault]);
      }
    }
  });

  it('stays as it was with a choice that it does not have', () => {
    const fault = newFault('weldedPole');
    expect(withFaultField(fault, 'pole', 'D')).toBe(fault);
    expect(withFaultField(fault, 'from', 1)).toBe(fault);
    expect(withFaultField(newFault('lostPhase'), 'from', null)).toEqual(newFault('lostPhase'));
    expect(withFaultField(newFault('supplyLost'), 'until', null)).toMatchObject({ until: null });
  });

  it('says why it cannot be', () => {
    const belt = parseScenario(example('may-this-belt-be-plugged'));
    expect(whyNoFault(belt, newFault('overloadNeverTrips'))).toBe('has no meaning without a control circuit');
    const welded = { ...belt, starter: { ...belt.starter, faults: [newFault('weldedContactor')] } };
    expect(whyNoFault(welded, newFault('weldedContactor'))).toContain('repeats the fault');
  });
});

describe('a typed quantity', () => {
  it('is read in the unit beside the field where it has none', () => {
    expect(readField(' 12 ', 'time', 'ms')).toBeCloseTo(0.012, 15);
    expect(readField('1.5 s', 'time', 'ms')).toBe(1.5);
    expect(readField('\u22125', 'torque', 'N·m')).toBe(-5);
    // As this program writes it: true minus, narrow spaces between thousands.
    expect(readField('12\u202F500', 'time', 'ms')).toBe(12.5);
    expect(readField('60', 'speed', 'r/min')).toBeCloseTo(2 * Math.PI, 12);
    expect(readField('90', 'angle', '°')).toBeCloseTo(Math.PI / 2, 12);
  });

  it('that is none is answered in a sentence', () => {
    expect(readField('', 'time', 'ms')).toEqual({ message: 'nothing is typed; expected a time' });
    expect(readField('5 kg', 'time', 'ms')).toMatchObject({ message: expect.stringContaining('"kg"') });
  });
});

describe('a file that was chosen', () => {
  const bytes = (text: string) => new TextEncoder().encode(text);

  it('is text, whether a scenario or not', () => {
    expect(textOfFile('a.yaml', bytes('title: Säge\n'))).toEqual({ text: 'title: Säge\n', note: null });
    expect(textOfFile('a.yaml', bytes('a: 1\r\nb: 2\r\n'))).toEqual({ text: 'a: 1\r\nb: 2\r\n', note: null });
  });

  it('of lines that end in a carriage return alone is read as lines, and that is said', () => {
    const text = example('may-this-belt-be-plugged');
    const found = textOfFile('old.yaml', bytes(text.replaceAll('\n', '\r')));
    expect(found).toEqual({ text, note: expect.stringContaining('line ends') });
  });

  it.each([
    ['bytes that are none of UTF-8', new Uint8Array([0xff, 0xfe, 0x41]), 'notText'],
    ['a control character', bytes('title: x\u0000'), 'notText'],
    ['more bytes than any scenario', new Uint8Array(MOST_BYTES + 1), 'tooLarge'],
    ['more characters than any scenario', bytes('a'.repeat(300_000)), 'tooLarge'],
    ['nests too deep', bytes('['.repeat(100)), 'tooDeep'],
  ])('is refused with a problem: %s', (_, content, code) => {
    const found = textOfFile('a.bin', content);
    expect(found).toMatchObject({ problems: [{ code, file: 'a.bin' }] });
    if (content[0] === 0xff) expect(JSON.stringify(found)).toContain('is not text');
  });
});

describe('a place in a text', () => {
  it('is found by its line and column, and held within the text', () => {
    const text = 'abc\nde\r\nf';
    expect(text.slice(offsetOfPlace(text, 2, 2))).toBe('e\r\nf');
    expect(text.slice(offsetOfPlace(text, 3, 1))).toBe('f');
    expect(offsetOfPlace(text, 1, 99)).toBe(3);
    expect(offsetOfPlace(text, 9, 1)).toBe(text.length);
  });

  it('stands first in the words of a problem', () => {
    const problem = {
      code: 'missingUnit' as const,
      message: '5 has no unit',
      expected: 'a time',
      file: 'a.yaml',
      line: 12,
      column: 5,
      path: 'starter.deadTime',
      found: '5',
    };
    expect(placeWords(problem)).toBe('line 12, column 5: starter.deadTime: 5 has no unit; expected a time');
    expect(placeWords({ ...problem, line: null, column: null, path: '' })).toBe(
      '5 has no unit; expected a time',
    );
  });

  it('on a disk is a name without folders', () => {
    expect(saveName('belt.yml')).toBe('belt.yaml');
    expect(saveName('../a:b.json')).toBe('..-a-b.yaml');
    expect(saveName('  ')).toBe('scenario.yaml');
  });
});
