import { lineReader } from './lineReader.ts';
import { onInterrupt } from './onInterrupt.ts';
import { runCli } from './program.ts';

/** The command line in a process: the only place that reads the environment and sets the exit code. */
export async function main(process: NodeJS.Process): Promise<void> {
  // A reader that has seen enough (`| head`) closes the pipe; that is no error.
  for (const stream of [process.stdout, process.stderr])
    stream.on('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EPIPE') process.exit();
      throw error;
    });
  // Questions go where messages go: standard output may be on its way to a file.
  const reader =
    process.stdin.isTTY && process.stderr.isTTY ? lineReader(process.stdin, process.stderr) : null;
  process.exitCode = await runCli(process.argv.slice(2), {
    out: (text) => process.stdout.write(text),
    err: (text) => process.stderr.write(text),
    // npm changes to the package's folder; the person's paths start where the command was typed.
    cwd: (process.env.npm_lifecycle_event === 'start' && process.env.INIT_CWD) || process.cwd(),
    // NO_COLOR counts when it is not empty (no-color.org).
    colour: process.stdout.isTTY === true && !process.env.NO_COLOR,
    progress: process.stderr,
    onInterrupt: (listener) => onInterrupt(process, listener),
    ...(reader === null ? {} : { ask: reader.ask }),
  });
  reader?.close();
}
