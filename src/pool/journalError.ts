import { reasonOf } from './reasonOf.ts';

/** What helps where a journal cannot be gone on with. */
export const BEGIN_ANEW = '--fresh to begin anew (its rows are lost), or another folder (--out DIR)';

/** A journal that cannot be used or written; the message names the file, what is wrong and what would be right. */
export class JournalError extends Error {
  override readonly name = 'JournalError';
}

/** A failed file access as a JournalError. */
export function accessError(file: string, cause: unknown, expected: string): JournalError {
  return new JournalError(`${file}: ${reasonOf(cause)}; expected ${expected}`, { cause });
}
