import { createInterface, type Interface } from 'node:readline';

/** Reads lines from a person. */
export interface LineReader {
  /** Shows the prompt and gives back the line; null once the input has ended (Ctrl-C, Ctrl-D). */
  readonly ask: (prompt: string) => Promise<string | null>;
  /** Lets go of the input, so that the process can end. */
  readonly close: () => void;
}

/**
 * Reads lines with editing, one per question. Lines that arrive before their question, as when several are pasted at once, are
 * kept for it. Nothing is touched before the first question.
 */
export function lineReader(input: NodeJS.ReadableStream, output: NodeJS.WritableStream): LineReader {
  const early: string[] = [];
  let waiting: ((line: string | null) => void) | null = null;
  let ended = false;
  let lines: Interface | null = null;

  const open = () => {
    const opened = createInterface({ input, output, historySize: 0, terminal: true });
    opened.on('line', (line) => {
      if (waiting === null) early.push(line);
      else waiting(line);
      waiting = null;
    });
    opened.on('close', () => {
      ended = true;
      waiting?.(null);
      waiting = null;
    });
    return opened;
  };

  return {
    ask: (prompt) => {
      if (ended) return Promise.resolve(null);
      lines ??= open();
      const kept = early.shift();
      if (kept !== undefined) {
        output.write(`${prompt}${kept}\n`);
        return Promise.resolve(kept);
      }
      lines.setPrompt(prompt);
      lines.prompt();
      return new Promise((resolve) => {
        waiting = resolve;
      });
    },
    close: () => lines?.close(),
  };
}
