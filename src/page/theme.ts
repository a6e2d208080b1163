import { computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals';
import type { Theme } from '../report/palette.ts';

/** Theme that was asked for; `system` follows the computer's setting. */
export type ThemeChoice = 'system' | Theme;

const CHOICES: readonly ThemeChoice[] = ['system', 'light', 'dark'];
const STORED_AS = 'theme';

const systemIsDark = signal(false);

/** What the reader chose. */
export const themeChoice: Signal<ThemeChoice> = signal<ThemeChoice>('system');

/** Theme that is shown, for what draws on a canvas and cannot ask the style sheet. */
export const effectiveTheme: ReadonlySignal<Theme> = computed(() => {
  if (themeChoice.value !== 'system') return themeChoice.value;
  return systemIsDark.value ? 'dark' : 'light';
});

/** Follows the computer's setting, takes up the stored choice, and from then on shows and stores every choice. */
export function startTheme(): void {
  const dark = window.matchMedia('(prefers-color-scheme: dark)');
  systemIsDark.value = dark.matches;
  dark.addEventListener('change', ({ matches }) => {
    systemIsDark.value = matches;
  });
  themeChoice.value = storedChoice();
  effect(() => {
    const { dataset } = document.documentElement;
    if (themeChoice.value === 'system') delete dataset.theme;
    else dataset.theme = themeChoice.value;
    store(themeChoice.value);
  });
}

function storedChoice(): ThemeChoice {
  try {
    const stored = window.localStorage.getItem(STORED_AS);
    return CHOICES.find((choice) => choice === stored) ?? 'system';
  } catch {
    // Browsers that keep nothing throw here.
    return 'system';
  }
}

function store(choice: ThemeChoice): void {
  try {
    window.localStorage.setItem(STORED_AS, choice);
  } catch {
    // Then the choice lasts as long as the page.
  }
}
