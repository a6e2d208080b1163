import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import type { MotorPointKind } from '../../src/report/motorSheet.ts';
import type { MotorFile } from '../../src/report/renderMotorJson.ts';
import { runCommand } from '../support/commandLine.ts';
import { examplePath } from '../support/examples.ts';
import { expectWithin } from '../support/tolerance.ts';
import { filesBelow, folderWithExamples, workFolder, writeInto } from '../support/workFolder.ts';

/**
 * The 50 hp machine of P. C. Krause's table of induction machines (see tests/support/textbookMachines.ts); the values
 * expected below are those of its T-circuit, computed outside this project with six digits.
 */
const TEXTBOOK = `
title: Textbook machine
supply: { lineVoltage: 460 V, frequency: 60 Hz }
machine:
  poles: 4
  statorResistance: 0.087 ohm
  statorLeakage: 0.302 ohm
  magnetising: 13.08 ohm
  cages: [{ resistance: 0.228 ohm, leakage: 0.302 ohm }]
  inertia: 1.662 kg m^2
  rated: { speed: 1705 rpm }
load: { inertia: 1 kg m^2, torque: { kind: friction, torque: 100 N m } }
actions: [{ at: 0 s, do: start forward }]
`;
const SIX_DIGITS = { relative: 1e-5 };

const NAMEPLATE = `
title: From a nameplate
supply: { lineVoltage: 400 V, frequency: 50 Hz }
machine:
  nameplate: { power: 7.5 kW, speed: 1455 rpm, current: 14.8 A, powerFactor: 0.83, efficiency: 88 %,
    lockedRotorCurrent: 6.8 times, lockedRotorTorque: 2.2 times, breakdownTorque: 2.9 times }
load: { inertia: 0.1 kg m^2, torque: none }
actions: [{ at: 0 s, do: start forward }]
`;

it('--json has the points of the textbook machine, in SI, and writes no file', async () => {
  const folder = workFolder();
  const { exit, out, err } = await runCommand(folder, [
    ...['motor', writeInto(folder, 'book.yaml', TEXTBOOK), '--json'],
  ]);
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  expect(filesBelow(folder)).toEqual(['book.yaml']);
  const file: MotorFile = JSON.parse(out);
  const at = (kind: MotorPointKind) => file.points.find((point) => point.kind === kind);
  expectWithin(at('lockedRotor')?.current, 394.177, SIX_DIGITS, 'locked-rotor current, A');
  expectWithin(at('lockedRotor')?.torque, 538.499, SIX_DIGITS, 'locked-rotor torque, N·m');
  expectWithin(at('breakdown')?.torque, 780.984, SIX_DIGITS, 'pull-out torque, N·m');
  expectWithin(at('breakdown')?.slip, 0.37781, SIX_DIGITS, 'pull-out slip');
  expectWithin(at('plugging')?.current, 421.974, SIX_DIGITS, 'current at slip 2, A');
  expectWithin(at('plugging')?.torque, 308.63, SIX_DIGITS, 'torque at slip 2, N·m');
  expectWithin(at('rated')?.current, 62.804, SIX_DIGITS, 'current at rated speed, A');
  expectWithin(at('noLoad')?.current, 19.846, { relative: 3e-5 }, 'current at synchronous speed, A');
  expect(at('pullUp')).toBe(undefined);
  expect(file.estimation).toBe(null);
});

it('the curves of --json run from synchronous speed backwards to synchronous speed, and through the points', async () => {
  const folder = workFolder();
  const { out } = await runCommand(folder, ['motor', writeInto(folder, 'a.yaml', TEXTBOOK), '--json']);
  const { curve, points }: MotorFile = JSON.parse(out);
  // 60 Hz, 4 poles: 1800 r/min.
  expectWithin(curve.speed[0], -60 * Math.PI, { relative: 1e-12 }, 'first speed, rad/s');
  expectWithin(curve.speed.at(-1), 60 * Math.PI, { relative: 1e-12 }, 'last speed, rad/s');
  expect(curve.speed.every((speed, i) => i === 0 || speed > curve.speed[i - 1]!)).toBe(true);
  expect([curve.torque.length, curve.current.length]).toEqual([curve.speed.length, curve.speed.length]);
  for (const { speed, torque, current } of points) {
    const i = curve.speed.indexOf(speed);
    expect([curve.torque[i], curve.current[i]]).toEqual([torque, current]);
  }
});

it('in the terminal circuit, points and thirteen speeds stand in 80 columns, and the drawing is named', async () => {
  const folder = workFolder();
  const { exit, out, err } = await runCommand(folder, ['motor', writeInto(folder, 'book.yaml', TEXTBOOK)]);
  expect({ exit, err }).toEqual({ exit: 0, err: '' });
  expect(out).toContain('Textbook machine');
  expect(out).toMatch(/Magnetising reactance +13\.1 Ω/u);
  expect(out).toMatch(/^locked rotor +0 .* 538 .* 394 /mu);
  const table = out.slice(out.lastIndexOf('slip')).trimEnd().split('\n');
  const speeds = table.flatMap((line) => /^ +(−?\d+) +[\d.]+ /u.exec(line)?.[1] ?? []);
  expect(speeds).toEqual([
    ...['−1800', '−1500', '−1200', '−900', '−600', '−300', '0', '300', '600', '900', '1200', '1500', '1800'],
  ]);
  expect(table.at(-1)).toBe(`Drawing: ${path.join('reports', 'book', 'motor.svg')}`);
  expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  expect(filesBelow(folder)).toEqual(['book.yaml', 'reports/book/motor.svg']);
});

it('the drawing is one SVG element whose tags close, with the load in it', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'book.yaml', TEXTBOOK.replace('Textbook machine', '"<b> & Co"'));
  await runCommand(folder, ['motor', file, '--out', 'here']);
  const svg = readFileSync(path.join(folder, 'here', 'motor.svg'), 'utf8');
  expect(svg).toMatch(/^(<\?xml[^>]*>\s*)?<svg [^>]*xmlns="http:\/\/www\.w3\.org\/2000\/svg"/u);
  expect(unclosed(svg)).toEqual([]);
  expect(svg).not.toMatch(/NaN|Infinity|undefined|<b>/u);
  expect(svg).toContain('>load<');
});

/** Names of elements that are left open or closed out of order. */
function unclosed(markup: string): string[] {
  const open: string[] = [];
  for (const [, slash, name, rest] of markup.matchAll(/<(\/?)([A-Za-z]+)((?:[^<>"]|"[^"<]*")*)>/gu)) {
    if (slash === '/') {
      if (open.pop() !== name) return [name!];
    } else if (!rest!.endsWith('/')) open.push(name!);
  }
  return open;
}

it('a nameplate is shown beside what its circuit gives', async () => {
  const folder = workFolder();
  const { exit, out } = await runCommand(folder, ['motor', writeInto(folder, 'plate.yaml', NAMEPLATE)]);
  expect(exit).toBe(0);
  expect(out).toMatch(/^What the estimated circuit gives, beside the nameplate$/mu);
  expect(out).toMatch(/^locked-rotor current +[\d.]+ A /mu);
});

it('units and characters are those asked for', async () => {
  const folder = folderWithExamples();
  const file = examplePath('what-does-a-full-reversal-cost');
  const { out } = await runCommand(folder, ['motor', file, '--units', 'us', '--ascii']);
  expect(out).toContain('lbf*ft');
  // The name of the file is the system's own.
  expect(/[^\n -~]/u.exec(out.slice(0, out.indexOf('Drawing')))).toBe(null);
});

it('--json with --out writes the drawing and says so beside the data', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'book.yaml', TEXTBOOK);
  const { out, err } = await runCommand(folder, ['motor', file, '--json', '--out', 'here']);
  expect(JSON.parse(out).title).toBe('Textbook machine');
  expect(err).toBe(`Drawing: ${path.join('here', 'motor.svg')}\n`);
  expect(filesBelow(folder)).toEqual(['book.yaml', 'here/motor.svg']);
});

it('a rated power that the circuit cannot deliver is refused with its place', async () => {
  const folder = workFolder();
  const file = writeInto(folder, 'a.yaml', TEXTBOOK.replace('speed: 1705 rpm', 'power: 900 kW'));
  const { exit, out, err } = await runCommand(folder, ['motor', file]);
  expect({ exit, out }).toEqual({ exit: 1, out: '' });
  expect(err).toMatch(/^a\.yaml:11:\d+ machine\.rated\.power: /u);
});
