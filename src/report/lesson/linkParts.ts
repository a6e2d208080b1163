import { maxCharacters } from '../../scenario/limits.ts';
import type { UnitSystem } from '../formatQuantity.ts';
import { type Lesson, unbegun } from './lesson.ts';
import { readLesson } from './readLesson.ts';

/** Everything a link carries. */
export interface LinkParts {
  /** Of the scenario; of a lesson with a hidden fault the text without it. */
  readonly text: string;
  /** null: no lesson. */
  readonly lesson: Lesson | null;
  readonly units: UnitSystem;
  readonly largePrint: boolean;
}

/** Largest content of a link once inflated, bytes: twice the longest scenario that is looked at. */
export const MOST_LINK_BYTES = 2 * maxCharacters;
/** Longest link that is looked at, characters: content that does not deflate at all, in base64, and a little more. */
export const LONGEST_LINK = 2 * MOST_LINK_BYTES;
/** Begins every link of this form; another form will have another number. */
export const LINK_VERSION = 'v1.';

/** The content of a link as JSON. */
export function linkJson({ text, lesson, units, largePrint }: LinkParts): string {
  return JSON.stringify({ text, lesson: lesson === null ? null : unbegun(lesson), units, largePrint });
}

/** The parts of a link from its JSON; null where it is none. */
export function readLinkJson(json: string): LinkParts | null {
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch {
    return null;
  }
  if (typeof value !== 'object' || value === null) return null;
  const found: { text?: unknown; lesson?: unknown; units?: unknown; largePrint?: unknown } = value;
  const { text, units, largePrint } = found;
  const lesson = found.lesson === null ? null : readLesson(found.lesson);
  if (typeof text !== 'string' || (units !== 'SI' && units !== 'us') || typeof largePrint !== 'boolean')
    return null;
  if (found.lesson !== null && lesson === null) return null;
  return { text, lesson, units, largePrint };
}
