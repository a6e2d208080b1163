import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { QUESTIONS } from '../../src/cli/questions.ts';
import { readAnswer } from '../../src/cli/readAnswer.ts';
import { filesBelow, workFolder, writeInto } from '../support/workFolder.ts';
import { answersTo, runAnswering } from './answering.ts';

const NEEDED = {
  'Rated power': '7.5 kW',
  Voltage: '400 V',
  Frequency: '50 Hz',
  'Speed at rated output': '1455 rpm',
};

it('Enter at everything but what is needed writes a file that the options would have written', async () => {
  const folder = workFolder();
  const asked = await runAnswering(folder, ['new', 'asked.yaml'], answersTo(NEEDED));
  expect(asked.exit).toBe(0);
  expect(asked.out).toMatch(/^asked\.yaml: written\n\nNext:\n/u);
  const options = ['--power', '7.5 kW', '--voltage', '400 V', '--frequency', '50 Hz', '--speed', '1455 rpm'];
  const given = await runAnswering(folder, ['new', 'given.yaml', ...options, '--no-questions'], () => null);
  expect(given.prompts).toEqual([]);
  const read = (file: string) => readFileSync(path.join(folder, file), 'utf8');
  expect(read('asked.yaml')).toBe(read('given.yaml'));
});

it('a wrong answer is explained and asked again; another unit is read back', async () => {
  const folder = workFolder();
  const answers = { ...NEEDED, 'Rated power': ['7.5', 'ten hp', '10 hp'], 'Code letter': ['I', 'h'] };
  const { exit, screen, prompts } = await runAnswering(folder, ['new', 'a.yaml'], answersTo(answers));
  expect(exit).toBe(0);
  expect(prompts.filter((prompt) => prompt.includes('Rated power'))).toHaveLength(3);
  const power = screen.slice(screen.indexOf('Rated power'), screen.indexOf('Voltage'));
  expect(power).toMatch(
    /: 7\.5\n.*write `7\.5 kW`\n.*: ten hp\n.*does not begin with a number.*\n.*: 10 hp\n/u,
  );
  // 10 hp × 745.7 W
  expect(power).toContain('= 7.46 kW');
  expect(screen).toContain('I, O and Q are not used');
  expect(parse(readFileSync(path.join(folder, 'a.yaml'), 'utf8')).machine.nameplate).toMatchObject({
    power: '10 hp',
    codeLetter: 'H',
  });
});

it('what is needed is asked again until it is there; poles only where no speed is known', async () => {
  const folder = workFolder();
  const answers = { ...NEEDED, 'Speed at rated output': '', Voltage: ['', '', '400 V'], Number: ['', '4'] };
  const { exit, screen, prompts } = await runAnswering(folder, ['new', 'a.yaml'], answersTo(answers));
  expect(exit).toBe(0);
  const count = (begin: string) => prompts.filter((prompt) => prompt.trimStart().startsWith(begin)).length;
  expect([count('Voltage'), count('Number of poles'), count('Current')]).toEqual([3, 2, 1]);
  expect(screen.match(/This one is needed/gu)).toHaveLength(3);
});

it('questions follow the answers: what belongs to a gear or a fan is asked only there', async () => {
  const plain = await runAnswering(workFolder(), ['new', 'a.yaml'], answersTo(NEEDED));
  const full = await runAnswering(
    workFolder(),
    ['new', 'a.yaml'],
    answersTo({ ...NEEDED, 'Gear: motor speed': '3', Kind: 'Fan', 'Load torque': '20 N m' }),
  );
  const words = (prompts: readonly string[]) => prompts.map((prompt) => prompt.trim().split(' (')[0]);
  expect(words(full.prompts).filter((asks) => !words(plain.prompts).includes(asks))).toEqual([
    'Gear: efficiency',
    'Load torque',
    'Speed of the fan at that torque',
  ]);
});

it('what options say is not asked', async () => {
  const folder = workFolder();
  const options = ['--power', '7.5 kW', '--title', 'Belt', '--load', 'none'];
  const { exit, prompts } = await runAnswering(folder, ['new', 'a.yaml', ...options], answersTo(NEEDED));
  expect(exit).toBe(0);
  expect(
    prompts.filter((prompt) => /Title|power at the shaft|Kind of load|Load torque/u.test(prompt)),
  ).toEqual([]);
});

it('answers that contradict each other are explained, offered again, and can be put right or taken back', async () => {
  const folder = workFolder();
  const answers = {
    ...NEEDED,
    'Rated power': ['20 kW', ''],
    Current: ['14.8 A', '38 A'],
    'Power factor': ['0.83', '0.85'],
    Efficiency: ['90 %', '-'],
  };
  const { exit, screen, prompts } = await runAnswering(folder, ['new', 'a.yaml'], answersTo(answers));
  expect(exit).toBe(0);
  expect(screen).toMatch(
    /This cannot be used:\n {2}Rated power at the shaft \(--power\): of 20 kW contradicts/u,
  );
  const offered = prompts.slice(prompts.findIndex((prompt) => prompt.includes('[20 kW]')));
  expect(offered.find((prompt) => prompt.includes('Efficiency'))).toContain('[90 %]');
  expect(offered.some((prompt) => /Gear|Contactors|Title/u.test(prompt))).toBe(false);
  const { nameplate } = parse(readFileSync(path.join(folder, 'a.yaml'), 'utf8')).machine;
  expect(nameplate).toEqual({ power: '20 kW', speed: '1455 rpm', current: '38 A', powerFactor: 0.85 });
});

it.each([0, 1, 5, 15])('an end after %i answers leaves no file', async (count) => {
  const folder = workFolder();
  const answer = answersTo(NEEDED);
  let given = 0;
  const { exit, out, screen } = await runAnswering(folder, ['new', 'a.yaml'], (prompt) => {
    given += 1;
    return given > count ? null : answer(prompt);
  });
  expect({ exit, out }).toEqual({ exit: 1, out: '' });
  expect(screen).toMatch(/Ended; nothing was written\.\n$/u);
  expect(filesBelow(folder)).toEqual([]);
});

it('a file that is there is refused before the first question', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'a.yaml', 'mine');
  const { exit, prompts } = await runAnswering(folder, ['new', file], answersTo(NEEDED));
  expect({ exit, prompts }).toEqual({ exit: 1, prompts: [] });
});

it('every answer that a prompt shows as an example is read as it stands', () => {
  const examples = QUESTIONS.flatMap((question) =>
    question.example.split(/, or | or |, /u).map((example) => ({ question, example })),
  );
  expect(examples.length).toBeGreaterThan(QUESTIONS.length);
  for (const { question, example } of examples) {
    const read = readAnswer(question, example);
    expect('answer' in read ? String(read.answer) : read.wrong).toBe(example);
  }
});
