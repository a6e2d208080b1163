/** What a key does to the moving pictures. */
export type Shortcut = 'playOrPause' | 'stepBack' | 'stepOn';

/** A pressed key and what has the focus. */
export interface PressedKey {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly altKey: boolean;
  readonly metaKey: boolean;
}

/** Elements on which the space bar does something of its own. */
const USES_SPACE =
  'button, input, select, textarea, a, summary, [contenteditable], [role="tab"], [role="slider"]';
/** Elements into which one writes. */
const IS_WRITTEN_IN =
  'textarea, select, [contenteditable], input:not([type="range"], [type="checkbox"], [type="radio"])';

/** The shortcut that a key is where the focus is now; null: it is none there. */
export function shortcutOf(pressed: PressedKey, focus: Pick<Element, 'matches'> | null): Shortcut | null {
  if (pressed.ctrlKey || pressed.altKey || pressed.metaKey) return null;
  if (pressed.key === ' ') return focus?.matches(USES_SPACE) === true ? null : 'playOrPause';
  if (focus?.matches(IS_WRITTEN_IN) === true) return null;
  if (pressed.key === ',') return 'stepBack';
  return pressed.key === '.' ? 'stepOn' : null;
}
