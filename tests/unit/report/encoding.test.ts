import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { encodeBase64, encodeColumn } from '../../../src/report/encodeColumn.ts';
import { sha256Base64 } from '../../../src/report/sha256.ts';

describe('encodings, against those of Node', () => {
  it('base64 is the same', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
        expect(encodeBase64(bytes)).toBe(Buffer.from(bytes).toString('base64'));
      }),
    );
  });

  it('SHA-256 is the same', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), (text) => {
        expect(sha256Base64(text)).toBe(createHash('sha256').update(text).digest('base64'));
      }),
    );
  });

  it.each([55, 56, 63, 64, 65, 119, 120])('SHA-256 pads a text of %i bytes right', (length) => {
    const text = 'a'.repeat(length);
    expect(sha256Base64(text)).toBe(createHash('sha256').update(text).digest('base64'));
  });

  it('a column of doubles reads back as the same', () => {
    fc.assert(
      fc.property(fc.float64Array({ maxLength: 50 }), (values) => {
        const bytes = Buffer.from(encodeColumn(values, 'f8').bdata, 'base64');
        expect(new Float64Array(Uint8Array.from(bytes).buffer)).toEqual(values);
      }),
    );
  });
});
