import { type ButtonWord, meaningOf } from './actionWords.ts';
import { defaultPress } from './defaults.ts';
import type { ButtonAction } from './scenario.ts';

/** A button action as written. */
export interface WrittenButton {
  /** s */
  readonly at: number;
  readonly do: ButtonWord;
  /** s; how long it is held down, where that is said. */
  readonly for?: number | undefined;
}

/**
 * Every press and release in order of time. A pressed button is let go after its time; where it is pressed again before, after
 * that of the later press. At one instant, what was written earlier comes first. What repeats itself at one instant is dropped.
 *
 * @param written in order of time
 */
export function buttonActions(written: readonly WrittenButton[]): ButtonAction[] {
  const all = written.flatMap((one, index): ButtonAction[] => {
    const { letsGo, ...meaning } = meaningOf(one.do);
    const action = { at: one.at, ...meaning };
    if (!letsGo) return [action];
    const release = one.at + (one.for ?? defaultPress);
    return isPressedAgain(written, index, release)
      ? [action]
      : [action, { at: release, do: 'release', button: meaning.button }];
  });
  const ordered = all.toSorted((a, b) => a.at - b.at);
  return ordered.filter((action, index) => !repeats(action, ordered, index));
}

function isPressedAgain(written: readonly WrittenButton[], index: number, before: number): boolean {
  const { button } = meaningOf(written[index]!.do);
  for (let next = index + 1; next < written.length; next++) {
    const later = written[next]!;
    if (later.at >= before) return false;
    const meaning = meaningOf(later.do);
    if (meaning.button === button && meaning.do === 'press') return true;
  }
  return false;
}

/** True where the last thing done to the same button at the same instant is the same. */
function repeats({ at, do: verb, button }: ButtonAction, ordered: readonly ButtonAction[], index: number) {
  for (let before = index - 1; before >= 0 && ordered[before]!.at === at; before--)
    if (ordered[before]!.button === button) return ordered[before]!.do === verb;
  return false;
}
