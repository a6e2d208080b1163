import { signal } from '@preact/signals';
import type { Problem } from '../../index.ts';
import type { PageActions } from '../actions.ts';

/** Why the last file could not even be read; the scenario then stays as it is. */
export const unreadable = signal<readonly Problem[]>([]);

/** Text that somebody writes and has not applied; it outlasts a look at another task. null: none. */
export const draft = signal<string | null>(null);

/** Opens a file that was dropped or chosen; of one that is not text nothing is opened, and what is wrong with it is kept. */
export async function openFile(file: File, act: PageActions): Promise<void> {
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
  openText(found.text, file.name, act);
}

/** Opens a text; what was written and not applied makes way for it. */
export function openText(text: string, fileName: string, act: PageActions): void {
  unreadable.value = [];
  draft.value = null;
  act.open(text, fileName);
}
