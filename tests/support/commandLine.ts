import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { runCli } from '../../src/cli/program.ts';

export interface CommandRun {
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
}

/** The project's folder: where `npm start` works from. */
export const PROJECT = fileURLToPath(new URL('../../', import.meta.url));

const START = fileURLToPath(new URL('../../src/cli/start.js', import.meta.url));

/** Runs a command line in this process; `cwd` is what relative paths start from. */
export async function runCommand(
  cwd: string,
  args: readonly string[],
  options: { readonly colour?: boolean } = {},
): Promise<CommandRun> {
  let out = '';
  let err = '';
  const exit = await runCli(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    cwd,
    colour: options.colour === true,
  });
  return { exit, out, err };
}

export interface ProcessOptions {
  readonly cwd: string;
  readonly env?: Readonly<Record<string, string>>;
  /** Options of Node itself. */
  readonly node?: readonly string[];
  /** Closes its end of stdout after the first piece, as `head -1` does. */
  readonly closeEarly?: boolean;
}

/** Runs a command line as `npm start` does, as a process of its own whose output is a pipe. */
export function runProcess(args: readonly string[], options: ProcessOptions): Promise<CommandRun> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...(options.node ?? []), START, ...args], {
      cwd: options.cwd,
      env: { ...process.env, ...options.env },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let out = '';
    let err = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text;
      if (options.closeEarly === true) child.stdout.destroy();
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      err += text;
    });
    child.on('error', reject);
    child.on('close', (exit) => resolve({ exit, out, err }));
  });
}
