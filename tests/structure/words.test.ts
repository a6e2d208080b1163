import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));

/** Where the texts of a judgement are written. */
const ROOMS = [
  'assess',
  'survey/alternatives',
  'survey/inverse',
  'survey/plan',
  'recording',
  'report',
  'cli',
];

/** What may be said of safety: that there is none. */
const ALLOWED = [/neither holds nor is fail-safe/gu, /A zero-speed switch is not a safety stop/gu];

/** Text without its comments. */
function code(text: string): string {
  return text.replaceAll(/\/\*.*?\*\//gsu, '').replaceAll(/^\s*\/\/.*$/gmu, '');
}

function claims(text: string): string[] {
  const rest = ALLOWED.reduce((left, allowed) => left.replaceAll(allowed, ''), code(text));
  return rest.match(/.*\bsafe(?:r|st|ly|ty)?\b.*/giu) ?? [];
}

it('no text of the judgement calls anything safe', () => {
  const found = ROOMS.flatMap((room) =>
    readdirSync(join(SRC, room), { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith('.ts'))
      .flatMap((path) =>
        claims(readFileSync(join(SRC, room, path), 'utf8')).map((line) => `${path}: ${line}`),
      ),
  );
  expect(found).toEqual([]);
});

it('a claim of safety is found, a denial is none', () => {
  expect(claims("'this stop is safe'")).toHaveLength(1);
  expect(claims("'Plugging neither holds nor is fail-safe: it'")).toEqual([]);
});
