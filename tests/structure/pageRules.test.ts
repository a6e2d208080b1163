import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { arithmetic, foreignAddresses, unsafeText } from '../support/pageSourceRules.ts';
import type { SourceFile } from '../support/sourceRules.ts';

const PAGE = fileURLToPath(new URL('../../src/page/', import.meta.url));

function filesEnding(ending: RegExp): readonly SourceFile[] {
  return readdirSync(PAGE, { recursive: true, encoding: 'utf8' })
    .filter((path) => ending.test(path) && !path.endsWith('.d.ts'))
    .map((path) => ({ path: path.replaceAll('\\', '/'), text: readFileSync(join(PAGE, path), 'utf8') }));
}

const sources = filesEnding(/\.tsx?$/u);
const sheets = filesEnding(/\.css$/u);
const markup = filesEnding(/\.html$/u);

describe('the page', () => {
  it('is read: components, modules and style sheets', () => {
    expect(sources.some(({ path }) => path.endsWith('.tsx'))).toBe(true);
    expect(sources.map(({ path }) => path)).toContain('theme.ts');
    expect(sheets.map(({ path }) => path)).toContain('base.css');
    expect(markup.map(({ path }) => path)).toEqual(['index.html']);
  });

  it('computes nothing', () => {
    expect(arithmetic(sources)).toEqual([]);
  });

  it('makes no markup, program or style out of text', () => {
    expect(unsafeText(sources)).toEqual([]);
  });

  it('takes no style, picture or font from elsewhere', () => {
    expect(foreignAddresses(sheets)).toEqual([]);
    for (const { text } of markup) expect(text).not.toMatch(/(?:href|src)="(?!\.\/)/u);
  });

  it('has no style and no program inside its markup', () => {
    for (const { text } of markup) {
      expect(text).not.toMatch(/<style|\sstyle=|\son\w+=/iu);
      expect(text.match(/<script[^>]*>/gu)).toEqual(['<script type="module" src="./main.tsx">']);
    }
  });
});

const planted = (text: string): SourceFile[] => [{ path: 'Part.tsx', text }];

describe('a planted breach is found', () => {
  it.each([
    'const a = b * 2;',
    'const a = b / c;',
    'const a = b % 2;',
    'const a = b ** 2;',
    'const a = b - c;',
    'const a = b + c;',
    'const a = 1 + 2;',
    "const a = b + c + 'x';",
    'a *= 2;',
    'a /= 2;',
    'a **= 2;',
    'a %= 2;',
    'a -= 2;',
    'a += b;',
    'const a = b << 1;',
    'const a = b | 0;',
    'const a = ~b;',
    'const a = -b;',
    'const a = Math.max(b, c);',
    'const { max } = Math;',
    'const a = globalThis["x"](Math);',
    'const a = <p>{b * 2}</p>;',
    `const a = \`\${b * 2}\`;`,
  ])('arithmetic: %s', (text) => {
    expect(arithmetic(planted(text))).toHaveLength(1);
  });

  it.each([
    'i++;',
    '--i;',
    "const a = 'x' + b;",
    "const a = b + ('x' + c);",
    `const a = b + \`\${c}\`;`,
    "a += 'x';",
    'const a = -1;',
    'type A = B | C; type D = B & C;',
    'const a = b < c && d >= e;',
    '// a * b\nconst a = "b * c";',
    'const a = b.Math;',
  ])('and what is no arithmetic is let be: %s', (text) => {
    expect(arithmetic(planted(text))).toEqual([]);
  });

  it.each([
    'a.innerHTML = b;',
    "a['outerHTML'] = b;",
    "a.insertAdjacentHTML('beforeend', b);",
    'const a = <p dangerouslySetInnerHTML={b} />;',
    'eval(b);',
    'globalThis.eval(b);',
    "new Function('a', b);",
    "setTimeout('a()', 0);",
    'document.write(b);',
    "a.setAttribute('style', b);",
    "a.setAttribute('onclick', b);",
    'a.style.cssText = b;',
    'const a = <p style="x: y" />;',
    `const a = <p style={\`x: \${y}\`} />;`,
    'const a = <script src={b} />;',
    'const a = <style>{b}</style>;',
  ])('text that would be run or drawn: %s', (text) => {
    expect(unsafeText(planted(text))).toHaveLength(1);
  });

  it.each([
    'const a = <p style={{ width: b }}>{c}</p>;',
    'a.textContent = b;',
    "a.setAttribute('class', b);",
    'setTimeout(() => a(), 0);',
    'const evaluate = 1; evaluate(b);',
  ])('and harmless text is let be: %s', (text) => {
    expect(unsafeText(planted(text))).toEqual([]);
  });

  it.each([
    "a { background: url('https://example.org/a.png') }",
    'a { background: url(//example.org/a.png) }',
    'a { background: url(/a.png) }',
    '@import "./other.css";',
  ])('an address in a style sheet: %s', (text) => {
    expect(foreignAddresses([{ path: 'a.css', text }])).toHaveLength(1);
  });

  it('and addresses beside the sheet or in a comment are let be', () => {
    const text = '/* url(https://example.org) */ a { background: url("./a.svg"); fill: url(#b) }';
    expect(foreignAddresses([{ path: 'a.css', text }])).toEqual([]);
  });
});
