import { LONGEST_HIDDEN, unhide } from './hiddenFault.ts';
import { type Lesson, newLesson } from './lesson.ts';
import { isQuestionKey } from './question.ts';

/**
 * The lesson of a link from parsed JSON, not begun; null where it is none. Only what a link carries is read: mode, questions, hidden fault.
 */
export function readLesson(value: unknown): Lesson | null {
  if (typeof value !== 'object' || value === null) return null;
  const { mode, questions, hidden }: { mode?: unknown; questions?: unknown; hidden?: unknown } = value;
  if (mode !== 'predict' && mode !== 'hiddenFault') return null;
  if (!Array.isArray(questions)) return null;
  const keys: unknown[] = questions;
  if (!keys.every(isQuestionKey)) return null;
  if (mode === 'predict') return hidden === null ? newLesson(mode, keys, null) : null;
  if (typeof hidden !== 'string' || hidden.length > LONGEST_HIDDEN || unhide(hidden) === null) return null;
  return newLesson(mode, keys, hidden);
}
