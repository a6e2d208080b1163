/** Marks text of a terminal; without colour all of these return it as it is. */
export interface TerminalPaint {
  readonly strong: (text: string) => string;
  readonly good: (text: string) => string;
  readonly doubtful: (text: string) => string;
  readonly alarm: (text: string) => string;
}

/** SGR escape sequences of ECMA-48: bold alone, and bold in green, yellow and red; never the only bearer of a meaning. */
export function terminalPaint(colour: boolean): TerminalPaint {
  const wrapIn = (code: string) => (text: string) => (colour ? `\u001B[${code}m${text}\u001B[0m` : text);
  return { strong: wrapIn('1'), good: wrapIn('1;32'), doubtful: wrapIn('1;33'), alarm: wrapIn('1;31') };
}
