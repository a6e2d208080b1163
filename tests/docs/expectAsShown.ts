import { expect } from 'vitest';
import { runShown, TALKS, wrongLine } from '../support/shownCommands.ts';
import type { SameCommands } from './allShown.ts';

/** Runs commands once and demands that each place which shows them is right about exit codes and output. */
export async function expectAsShown({ shown }: SameCommands): Promise<void> {
  const [first] = shown;
  const { text, ends } = await runShown(first!.commands);
  for (const { place, commands, output } of shown) {
    expect(
      ends.map(({ exit }) => exit),
      `exit codes at ${place}; printed: ${text.slice(-500)}`,
    ).toEqual(commands.map(({ exit }) => exit));
    if (output !== null) expect(wrongLine(output, text), `what ${place} shows`).toBeNull();
  }
  // Any other command that is all right says nothing on standard error.
  for (const [index, { args, exit }] of first!.commands.entries())
    if (exit === 0 && !TALKS.has(args[0])) expect(ends[index]!.err).toBe('');
}
