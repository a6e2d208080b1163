/** A text that can be gone back to. */
export interface PastText {
  readonly text: string;
  readonly fileName: string;
}

/** Texts that can be gone back to. */
const MOST = 100;

/** What was there before each change, the newest last. */
export interface History {
  /** Keeps a text before another one takes its place. */
  keep(past: PastText): void;
  /** Takes the newest back; undefined: there is none. */
  back(): PastText | undefined;
  clear(): void;
}

/** An empty history. */
export function newHistory(): History {
  const kept: PastText[] = [];
  return {
    keep(past) {
      if (kept.at(-1)?.text === past.text) return;
      kept.push(past);
      if (kept.length > MOST) kept.shift();
    },
    back: () => kept.pop(),
    clear() {
      kept.length = 0;
    },
  };
}
