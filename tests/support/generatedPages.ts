import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, inject } from 'vitest';
import { PROJECT } from './commandLine.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Generated pages are written instead of compared: `npm run pages`. */
    readonly updatePages: boolean;
  }
}

const read = (file: string): string => (existsSync(file) ? readFileSync(file, 'utf8') : '');

/**
 * Demands that a committed page holds what the code says today; with `npm run pages` writes it instead.
 *
 * @param page its path from the project's folder
 */
export function expectPage(page: string, text: string): void {
  const file = path.join(PROJECT, page);
  if (!inject('updatePages')) {
    expect(read(file), `${page} is not what the code says; \`npm run pages\` makes it anew`).toBe(text);
    return;
  }
  mkdirSync(path.dirname(file), { recursive: true });
  if (read(file) !== text) writeFileSync(file, text);
}

/**
 * The same for one section of a page that is written by hand for the rest: what stands between `<!-- begin NAME -->` and
 * `<!-- end NAME -->`, lines of their own.
 *
 * @throws Error where the page has no such pair of lines
 */
export function expectSection(page: string, name: string, text: string): void {
  const whole = read(path.join(PROJECT, page));
  const [begin, end] = [`<!-- begin ${name} -->\n`, `<!-- end ${name} -->\n`];
  const [before, rest, ...more] = whole.split(begin);
  const [old, after, ...others] = (rest ?? '').split(end);
  if (rest === undefined || after === undefined || more.length + others.length > 0)
    throw new Error(`${page} has no single section ${name}`);
  if (inject('updatePages')) expectPage(page, `${before}${begin}${text}${end}${after}`);
  else
    expect(old, `section ${name} of ${page} is not what the code says; \`npm run pages\` makes it anew`).toBe(
      text,
    );
}
