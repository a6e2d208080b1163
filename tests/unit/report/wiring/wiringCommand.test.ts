import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../../../src/cli/inputError.ts';
import { type WiringCommandOptions, wiringCommand } from '../../../../src/cli/wiringCommand.ts';
import { filesBelow, workFolder, writeInto } from '../../../support/workFolder.ts';

const PLUGGED = `
title: Roller table
supply: { lineVoltage: 400 V, frequency: 50 Hz }
machine:
  poles: 4
  statorResistance: 0.5 ohm
  statorLeakage: 1 ohm
  magnetising: 30 ohm
  cages: [{ resistance: 0.4 ohm, leakage: 1 ohm }]
  inertia: 0.1 kg m^2
  rated: { speed: 1440 rpm, current: 20 A }
load: { inertia: 0.1 kg m^2, torque: none }
`;
const SWITCH = 'zeroSpeedSwitch: { pickUpSpeed: 100 rpm, dropOutSpeed: 40 rpm }';

function run(folder: string, file: string | undefined, options: WiringCommandOptions): string {
  let out = '';
  const exit = wiringCommand(file, options, {
    out: (text) => {
      out += text;
    },
    err: () => {},
    cwd: folder,
    colour: false,
  });
  expect(exit).toBe(0);
  return out;
}

describe('wiring', () => {
  it('draws the starter of a scenario into its report folder and says where', () => {
    const folder = workFolder();
    const text = `${PLUGGED}starter: { ${SWITCH}, control: { scheme: plug to stop, memoryRelay: true } }\nactions: [{ at: 0 s, do: press forward }]\n`;
    const out = run(folder, writeInto(folder, 'table.yaml', text), { symbols: 'iec' });
    expect(out).toBe(`Drawing: ${path.join('reports', 'table', 'wiring.svg')}\n`);
    const svg = readFileSync(path.join(folder, 'reports', 'table', 'wiring.svg'), 'utf8');
    expect(svg).toContain('>Roller table</text>');
    expect(svg).toContain('>Plug to stop, one direction</text>');
    expect(svg).toContain('>-K3</text>');
  });

  it('draws all six schemes where no file is named, with the symbols asked for', () => {
    const folder = workFolder();
    run(folder, undefined, { symbols: 'us', out: 'drawings' });
    expect(filesBelow(folder)).toEqual(
      [
        'anti-plugging',
        'inching',
        'plug-to-stop',
        'plug-to-stop-both-directions',
        'reversing-directly',
        'reversing-through-stop',
      ]
        .map((name) => path.join('drawings', `${name}.svg`))
        .sort(),
    );
    const svg = readFileSync(path.join(folder, 'drawings', 'inching.svg'), 'utf8');
    expect(svg).toContain('Symbols: North American practice');
  });

  it('refuses a scenario without a control circuit and says what is missing', () => {
    const folder = workFolder();
    const file = writeInto(folder, 'bare.yaml', `${PLUGGED}actions: [{ at: 0 s, do: start forward }]\n`);
    expect(() => run(folder, file, { symbols: 'iec' })).toThrow(InputError);
    expect(() => run(folder, file, { symbols: 'iec' })).toThrow(/no control circuit.*starter\.control/u);
    expect(filesBelow(folder)).toEqual(['bare.yaml']);
  });
});
