import { addButton, addCommand, clearActions, setEndTime } from './actionEdits.ts';
import { adjust } from './adjust.ts';
import { setControlOption } from './controlEdit.ts';
import { checkYaml, type Draft, openDraft, readValid, type Valid } from './draft.ts';
import type { Edit } from './edit.ts';
import { setFaults } from './faultsEdit.ts';
import { setScheme } from './schemeEdit.ts';

/** A text after edits. */
export interface Edited {
  /** As it was where the edits were refused. */
  readonly text: string;
  readonly applied: boolean;
  /** Why not; null where they were. */
  readonly refusal: string | null;
}

/**
 * Carries out changes of a scenario in its text, in their order, and leaves every other character where it was. All of them or
 * none: where one is refused, or a valid scenario would not come out, the text stays as it is.
 *
 * @param text YAML or JSON
 * @example
 * applyEdits(text, [{ kind: 'adjust', key: 'loadInertia', value: 0.08 }]).text
 */
export function applyEdits(text: string, edits: readonly Edit[]): Edited {
  return applyWith({ find: () => undefined, keep: () => {} }, text, edits);
}

/**
 * The same for a hand that moves: keeps what it has read of the last few texts.
 *
 * @param remembered number of texts
 */
export function textEditor(remembered = 4): (text: string, edits: readonly Edit[]) => Edited {
  const known = new Map<string, Valid>();
  const memory: Memory = {
    find: (text) => known.get(text),
    keep: (valid) => {
      // The last used comes last; the first is forgotten.
      known.delete(valid.yaml.text);
      known.set(valid.yaml.text, valid);
      for (const old of known.keys()) {
        if (known.size <= remembered) break;
        known.delete(old);
      }
    },
  };
  return (text, edits) => applyWith(memory, text, edits);
}

/** Texts that have been read before. */
interface Memory {
  find(text: string): Valid | undefined;
  keep(valid: Valid): void;
}

function applyWith(memory: Memory, text: string, edits: readonly Edit[]): Edited {
  const refused = (refusal: string): Edited => ({ text, applied: false, refusal });
  // A text that nobody wants changed may be anything.
  if (edits.length === 0) return { text, applied: true, refusal: null };
  const first = memory.find(text) ?? readValid(text);
  if (typeof first === 'string') return refused(first);
  let valid: Valid = first;
  memory.keep(valid);
  for (const edit of edits) {
    const draft = openDraft(valid);
    const refusal = applyEdit(draft, edit);
    if (refusal !== null) return refused(refusal);
    const result = draft.result();
    if (result === null) return refused('the text is laid out in a way that cannot be changed from here');
    const next = result === valid.yaml ? valid : checkYaml(result);
    if (typeof next === 'string') return refused(next);
    valid = next;
  }
  memory.keep(valid);
  return { text: valid.yaml.text, applied: true, refusal: null };
}

function applyEdit(draft: Draft, edit: Edit): string | null {
  switch (edit.kind) {
    case 'adjust':
      return adjust(draft, edit.key, edit.value);
    case 'button':
      return addButton(draft, edit);
    case 'command':
      return addCommand(draft, edit);
    case 'clearActions':
      return clearActions(draft);
    case 'endTime':
      return setEndTime(draft, edit.value);
    case 'scheme':
      return setScheme(draft, edit.scheme);
    case 'control':
      return setControlOption(draft, edit.option);
    case 'faults':
      return setFaults(draft, edit.faults);
    default:
      return edit satisfies never;
  }
}
