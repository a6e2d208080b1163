import { runCli } from '../../src/cli/program.ts';

/** What a dialogue left behind. */
export interface Dialogue {
  readonly exit: number;
  readonly out: string;
  /** Messages and prompts with the answers behind them, as they stand on the screen. */
  readonly screen: string;
  readonly prompts: readonly string[];
}

/**
 * Runs a command line with a person at it.
 *
 * @param answer gives the line for a prompt; null ends the dialogue
 */
export async function runAnswering(
  cwd: string,
  args: readonly string[],
  answer: (prompt: string) => string | null,
): Promise<Dialogue> {
  let out = '';
  let screen = '';
  const prompts: string[] = [];
  const exit = await runCli(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      screen += text;
    },
    cwd,
    colour: false,
    ask: async (prompt) => {
      prompts.push(prompt);
      const line = answer(prompt);
      screen += `${prompt}${line ?? ''}\n`;
      return line;
    },
  });
  return { exit, out, screen, prompts };
}

/** Answers by the beginning of the prompt, each line once, in order; Enter where there is none left. */
export function answersTo(lines: Readonly<Record<string, string | readonly string[]>>) {
  const left = new Map(Object.entries(lines).map(([begin, line]) => [begin, [line].flat()]));
  return (prompt: string): string => {
    const begin = [...left.keys()].find((key) => prompt.trimStart().startsWith(key));
    return begin === undefined ? '' : (left.get(begin)!.shift() ?? '');
  };
}
