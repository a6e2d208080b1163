import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isLinkProblem, linkOf, readLink } from '../../../src/page/link.ts';
import { hide } from '../../../src/report/lesson/hiddenFault.ts';
import { newLesson } from '../../../src/report/lesson/lesson.ts';
import { type LinkParts, linkJson, MOST_LINK_BYTES } from '../../../src/report/lesson/linkParts.ts';
import { QUESTION_KEYS } from '../../../src/report/lesson/question.ts';

const lessons = fc.oneof(
  fc.constant(null),
  fc.subarray([...QUESTION_KEYS]).map((keys) => newLesson('predict', keys, null)),
  fc
    .subarray([...QUESTION_KEYS])
    .map((keys) => newLesson('hiddenFault', keys, hide([{ kind: 'overloadNeverTrips' }]))),
);
const anyParts: fc.Arbitrary<LinkParts> = fc.record({
  text: fc.string({ unit: 'binary', maxLength: 400 }),
  lesson: lessons,
  units: fc.constantFrom('SI' as const, 'us' as const),
  largePrint: fc.boolean(),
});
const PARTS: LinkParts = { text: 'title: Saw\n', lesson: null, units: 'SI', largePrint: false };

const made = async (parts: LinkParts): Promise<string> => {
  const link = await linkOf(parts);
  if (isLinkProblem(link)) throw new Error(link.message);
  return link;
};
/** A link of any content, made by Node's own means. */
const forged = async (json: string): Promise<string> => {
  const stream = new Blob([json]).stream().pipeThrough(new CompressionStream('deflate-raw'));
  return `v1.${Buffer.from(await new Response(stream).arrayBuffer()).toString('base64url')}`;
};
const message = async (link: string): Promise<string> => {
  const found = await readLink(link);
  if (!isLinkProblem(found)) throw new Error('was read');
  return found.message;
};

describe('a link', () => {
  it('gives back what went in, with or without its #', async () => {
    await fc.assert(
      fc.asyncProperty(anyParts, async (parts) => {
        const link = await made(parts);
        expect(link).toMatch(/^v1\.[A-Za-z0-9_-]+$/u);
        expect(await readLink(link)).toEqual(parts);
        expect(await readLink(`#${link}`)).toEqual(parts);
      }),
      { numRuns: 60, seed: 6 },
    );
  });

  it('with a letter changed, left out or cut off gives words or the parts, never an exception', async () => {
    const link = await made({ ...PARTS, text: 'title: Saw\nsupply: { lineVoltage: 400 V }\n'.repeat(4) });
    await fc.assert(
      fc.asyncProperty(fc.nat(link.length - 1), fc.constantFrom('A', '-', '%', ''), async (at, letter) => {
        for (const damaged of [link.slice(0, at) + letter + link.slice(at + 1), link.slice(0, at)]) {
          const found = await readLink(damaged);
          if (isLinkProblem(found)) expect(found.message.length).toBeGreaterThan(20);
          else expect(typeof found.text).toBe('string');
        }
      }),
      { numRuns: 100, seed: 6 },
    );
  });

  it('that is none, or of another version, says so', async () => {
    expect(await message('')).toContain('carries no scenario');
    expect(await message('#top')).toContain('no link');
    expect(await message('v2.AAAA')).toContain('another version');
    expect(await message('v1.')).toContain('damaged');
    expect(await message('v1.*')).toContain('damaged');
    expect(await message(`v1.${'A'.repeat(3_000_000)}`)).toContain('longer than any');
  });

  it('that unfolds to too much is given up at the bound', async () => {
    const bomb = await forged(' '.repeat(40 * MOST_LINK_BYTES));
    expect(bomb.length).toBeLessThan(40_000);
    expect(await message(bomb)).toContain('unfolds to more');
  });

  it.each([
    ['no JSON', '{'],
    ['a list', '[]'],
    ['nothing', 'null'],
    ['no text', '{"lesson":null,"units":"SI","largePrint":false}'],
    ['foreign units', '{"text":"","lesson":null,"units":"cgs","largePrint":false}'],
    ['a broken lesson', '{"text":"","lesson":{"mode":"exam"},"units":"SI","largePrint":false}'],
    ['no lesson at all', '{"text":"","units":"SI","largePrint":false}'],
  ])('whose content is %s is damaged', async (_, json) => {
    expect(await message(await forged(json))).toContain('damaged');
  });

  it('is refused in words where the scenario is too long, and made where it just fits', async () => {
    const room = MOST_LINK_BYTES - JSON.stringify({ ...PARTS, text: '' }).length;
    expect(isLinkProblem(await linkOf({ ...PARTS, text: 'x'.repeat(room + 1) }))).toBe(true);
    const parts = { ...PARTS, text: 'x'.repeat(room) };
    expect(await readLink(await made(parts))).toEqual(parts);
  });

  it('carries nothing of a student who has begun', async () => {
    const begun = {
      ...newLesson('predict', ['stopTime'], null),
      student: 'N. N.',
      revealed: ['stopTime' as const],
    };
    expect(linkJson({ ...PARTS, lesson: begun })).not.toContain('N. N.');
    const found = await readLink(await made({ ...PARTS, lesson: begun }));
    expect(found).toEqual({ ...PARTS, lesson: newLesson('predict', ['stopTime'], null) });
  });
});
