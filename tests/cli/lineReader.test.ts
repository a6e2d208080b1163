import { PassThrough } from 'node:stream';
import { expect, it } from 'vitest';
import { lineReader } from '../../src/cli/lineReader.ts';

const CTRL_C = '\u0003';
const CTRL_D = '\u0004';

function terminal() {
  const input = new PassThrough();
  const output = new PassThrough();
  let screen = '';
  output.on('data', (data: Buffer) => {
    screen += data.toString();
  });
  return { input, reader: lineReader(input, output), screen: () => screen };
}

it('shows the prompt and gives back the line behind it', async () => {
  const { input, reader, screen } = terminal();
  const line = reader.ask('Power: ');
  input.write('7.5 kW\r');
  expect(await line).toBe('7.5 kW');
  expect(screen()).toContain('Power: ');
  reader.close();
});

it('keeps lines that were pasted together for the questions they answer', async () => {
  const { input, reader, screen } = terminal();
  const first = reader.ask('A: ');
  input.write('one\rtwo\rthree\r');
  expect([await first, await reader.ask('B: '), await reader.ask('C: ')]).toEqual(['one', 'two', 'three']);
  expect(screen()).toContain('B: two');
  reader.close();
});

it.each([
  ['Ctrl-C', CTRL_C],
  ['Ctrl-D', CTRL_D],
])('%s ends the question and all that follow', async (_, key) => {
  const { input, reader } = terminal();
  const line = reader.ask('A: ');
  input.write(key);
  expect([await line, await reader.ask('B: ')]).toEqual([null, null]);
});

it('the end of the input ends the question', async () => {
  const { input, reader } = terminal();
  const line = reader.ask('A: ');
  input.end();
  expect(await line).toBe(null);
});
