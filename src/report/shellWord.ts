/** Writes a file name so that a POSIX shell takes it as one word. */
export function shellWord(name: string): string {
  const word = name.startsWith('-') ? `./${name}` : name;
  return /^[\w./,:@%+-]+$/u.test(word) ? word : `'${word.replaceAll("'", `'\\''`)}'`;
}
