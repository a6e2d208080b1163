/** The verbs about the starter, as people call them. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { runCommand } from '../support/commandLine.ts';
import { exampleText } from '../support/examples.ts';
import { filesBelow, folderWithExamples, writeInto } from '../support/workFolder.ts';

const SAW = 'examples/teacher/what-happens-after-the-stop-button.yaml';
const NO_CONTROL = 'examples/engineer/may-this-belt-be-plugged.yaml';

/** The saw with a piece of its file replaced. */
function edited(folder: string, before: string, after: string): string {
  const text = exampleText('what-happens-after-the-stop-button.yaml');
  if (!text.includes(before)) throw new Error(`the example has no "${before}"`);
  return writeInto(
    folder,
    'edited.yaml',
    text.replace(before, () => after),
  );
}

describe('interlocks', () => {
  it('with a file prints verdicts and faults, and ends with 0 when every property holds', async () => {
    const { exit, out } = await runCommand(folderWithExamples(), ['interlocks', SAW]);
    expect(exit).toBe(0);
    expect(out).toMatch(/^Plug to stop, one direction/);
    expect(out).toMatch(/States explored: \d+/);
    expect(out).toContain('What a fault breaks besides');
    expect(out).not.toContain('BROKEN');
  });

  it('ends with 3 and the shortest list of actions when a property is broken', async () => {
    const folder = folderWithExamples();
    const { exit, out } = await runCommand(folder, [
      'interlocks',
      edited(folder, 'memoryRelay: true', 'memoryRelay: false'),
    ]);
    expect(exit).toBe(3);
    expect(out).toMatch(
      /BROKEN +Turning the shaft starts nothing[^B]+shaft turned by hand[^B]+the coil of the reverse contactor is energised/,
    );
  });

  it('without a file shows all six schemes and ends with 0', async () => {
    const { exit, out } = await runCommand(folderWithExamples(), ['interlocks']);
    expect(exit).toBe(0);
    for (const title of [
      'Reversing only through stop',
      'Reversing directly',
      'Plug to stop, one direction',
      'Plug to stop, both directions',
      'Reversing with anti-plugging',
      'Inching in both directions with plug to stop',
    ])
      expect(out).toContain(title);
  });

  it('prints JSON that says the same', async () => {
    const { out } = await runCommand(folderWithExamples(), ['interlocks', SAW, '--json']);
    expect(JSON.stringify(JSON.parse(out))).toContain('Plug to stop, one direction');
  });

  it.each(['interlocks', 'wiring', 'sheet'])(
    '%s of a file without a control circuit is an error that says what would be right',
    async (verb) => {
      const { exit, err } = await runCommand(folderWithExamples(), [verb, NO_CONTROL]);
      expect(exit).toBe(1);
      expect(err).toMatch(/no control circuit.*expected starter.*control/s);
    },
  );
});

describe('wiring', () => {
  it('writes the drawing into the folder of the report', async () => {
    const folder = folderWithExamples();
    const { exit, out } = await runCommand(folder, ['wiring', SAW]);
    expect(exit).toBe(0);
    expect(out).toContain('wiring.svg');
    const drawing = readFileSync(
      path.join(folder, 'reports/what-happens-after-the-stop-button/wiring.svg'),
      'utf8',
    );
    expect(drawing).toMatch(/^<svg/);
    expect(drawing).toContain('Shingle cross-cut saw');
  });

  it('draws with other symbols on request, and every scheme without a file', async () => {
    const folder = folderWithExamples();
    await runCommand(folder, ['wiring', SAW, '--out', 'iec']);
    await runCommand(folder, ['wiring', SAW, '--symbols', 'us', '--out', 'us']);
    const read = (name: string) => readFileSync(path.join(folder, name, 'wiring.svg'), 'utf8');
    expect(read('us')).not.toBe(read('iec'));
    await runCommand(folder, ['wiring', '--out', 'all']);
    expect(filesBelow(path.join(folder, 'all'))).toHaveLength(6);
  });
});

describe('a run with push buttons', () => {
  it('puts the sequence chart and the wiring into its report', async () => {
    const folder = folderWithExamples();
    const { exit } = await runCommand(folder, [SAW, '--out', 'run']);
    expect(exit).toBe(0);
    const files = filesBelow(path.join(folder, 'run'));
    for (const name of ['figures/sequence.svg', 'figures/sequence-changeover.svg', 'figures/wiring.svg'])
      expect(files).toContain(name);
    const html = readFileSync(path.join(folder, 'run/report.html'), 'utf8');
    expect(html).toContain('reverse coil released: zero-speed switch opens (forward) at 46');
    expect(html).toContain('class="drawing"');
  });

  it('with the switch stuck closed ends with 2, and the first line says that the machine runs up in reverse', async () => {
    const folder = folderWithExamples();
    const file = edited(folder, '# faults:', 'faults:');
    const { exit, out } = await runCommand(folder, [file, '--out', 'run']);
    expect(exit).toBe(2);
    const [first] = out.replaceAll(/\n(?=[a-z])/g, ' ').split('\n');
    expect(first).toMatch(/^! .*has run up in the other direction to 99 % of synchronous speed/);
    const html = readFileSync(path.join(folder, 'run/report.html'), 'utf8');
    expect(html.indexOf('runs up in the other direction')).toBeGreaterThan(0);
    expect(html.indexOf('run up in the other direction')).toBeLessThan(html.indexOf('Calculation note'));
  });
});
