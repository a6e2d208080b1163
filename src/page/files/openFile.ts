import { batch, signal } from '@preact/signals';
import type { Problem } from '../../index.ts';
import type { PageProps } from '../actions.ts';

/** Why the last file could not even be read; the scenario then stays as it is. */
export const unreadable = signal<readonly Problem[]>([]);

/** What a person should know of the text that was last opened. */
export const notes = signal<readonly string[]>([]);

/** Text that somebody writes and has not applied. */
export interface Draft {
  readonly text: string;
  /** What it was begun from: where the scenario is another one by now, it has changed since. */
  readonly base: string;
}

/** It outlasts a look at another task. null: none. */
export const draft = signal<Draft | null>(null);

const KEPT = 'Your unapplied text can be brought back with Undo.';

/** Opens a file that was dropped or chosen; of one that is not text nothing is opened, and what is wrong with it is kept. */
export async function openFile(file: File, page: PageProps): Promise<void> {
  // Brings the reader of YAML with it, which the page does without until then.
  const { MOST_BYTES, textOfFile, tooLarge } = await import('../../scenario/edit/textOfFile.ts');
  const found =
    file.size > MOST_BYTES
      ? tooLarge(file.name, file.size)
      : textOfFile(file.name, new Uint8Array(await file.arrayBuffer()));
  if ('problems' in found) {
    unreadable.value = found.problems;
    return;
  }
  openText(found.text, file.name, page);
  if (found.note !== null) notes.value = [found.note, ...notes.value];
}

/** Opens a text; what was written and not applied makes way for it, and can be brought back. */
export function openText(text: string, fileName: string, { state, act }: PageProps): void {
  const left = draft.peek()?.text ?? null;
  const before = { text: state.text.peek(), fileName: state.fileName.peek() };
  const kept = left !== null && left !== text && left !== before.text;
  batch(() => {
    unreadable.value = [];
    notes.value = kept ? [KEPT] : [];
    draft.value = null;
    act.open(text, fileName);
    // Kept last, so that the first step back brings it.
    if (kept) act.keepForUndo(left, before.fileName);
  });
}
