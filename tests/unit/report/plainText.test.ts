import { describe, expect, it } from 'vitest';
import { cleanText, escapeMarkup, escapePlotText, jsonForScript } from '../../../src/report/plainText.ts';
import { cssString } from '../../../src/report/reportStyle.ts';
import { HOSTILE_TEXTS } from './hostile.ts';

describe('text from a scenario', () => {
  it.each(HOSTILE_TEXTS)('%j keeps no control character, direction override or lone surrogate', (text) => {
    expect(cleanText(text)).not.toMatch(/[\p{Cc}\p{Cs}\u202A-\u202E\u2066-\u2069\u2028\u2029]/u);
  });

  it.each(HOSTILE_TEXTS)('%j has no markup character left when escaped', (text) => {
    expect(escapeMarkup(text)).not.toMatch(/[<>"']/u);
    expect(escapePlotText(text)).not.toMatch(/[<>]|%\{/u);
  });

  it.each(HOSTILE_TEXTS)('%j comes back whole from JSON in a script element, without a <', (text) => {
    const json = jsonForScript({ text });
    expect(json).not.toContain('<');
    expect(JSON.parse(json)).toEqual({ text });
  });

  it.each(HOSTILE_TEXTS)('%j is a CSS string of letters, digits, spaces and escapes', (text) => {
    expect(cssString(text)).toMatch(/^"(?:[A-Za-z0-9 ]|\\[0-9a-f]{1,6} )*"$/u);
  });

  it('ordinary text passes unchanged', () => {
    expect(cleanText('Förderband, 7,5 kW · 東京')).toBe('Förderband, 7,5 kW · 東京');
  });
});
