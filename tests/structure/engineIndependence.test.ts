import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { engineDependence } from '../support/engineRules.ts';

const SRC = fileURLToPath(new URL('../../src/', import.meta.url));
const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts'))
  .map((path) => ({ path: path.replaceAll('\\', '/'), text: readFileSync(join(SRC, path), 'utf8') }));

it('what computes a run, a fit or a judgement uses no function whose last bit is the engine’s', () => {
  expect(files.length).toBeGreaterThan(200);
  expect(engineDependence(files)).toEqual([]);
});

describe('a planted use is found', () => {
  it.each([
    'const a = Math.sin(b);',
    'const a = Math.hypot(...b);',
    'const a = b.map(Math.log);',
    'const a = b ** 2;',
    'a **= 2;',
    "const a = Math['cos'](b);",
    'const { exp } = Math;',
    'const a = f(Math);',
  ])('%s', (text) => {
    expect(engineDependence([{ path: 'assess/heat/x.ts', text }])).toHaveLength(1);
    expect(engineDependence([{ path: 'report/x.ts', text }])).toEqual([]);
  });

  it.each([
    'const a = Math.sqrt(Math.PI * Math.abs(b));',
    'const a = Math.max(Math.floor(b), Math.fround(c));',
    '// Math.sin(b) ** 2\nconst a = "Math.sin";',
    'const a = b.Math;',
  ])('and what every engine computes alike is let be: %s', (text) => {
    expect(engineDependence([{ path: 'machine/x.ts', text }])).toEqual([]);
  });
});
