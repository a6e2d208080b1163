/** Marks what takes the focus over when the focused element goes away. */
export const FOCUS_HOME = 'data-focus-home';

/**
 * Keeps the keyboard's place: an element that is taken away or disabled while it has the focus leaves it to the part of the page that it
 * stood in, instead of to nothing.
 */
export function keepFocus(root: HTMLElement): void {
  let last: Element | null = null;
  let home: HTMLElement | null = null;
  root.addEventListener('focusin', ({ target }) => {
    last = target instanceof Element ? target : null;
    home = last?.closest<HTMLElement>(`[${FOCUS_HOME}]`) ?? null;
  });
  const observer = new MutationObserver(() => {
    if (last === null || (last.isConnected && !last.matches(':disabled'))) return;
    const { activeElement } = document;
    if (activeElement === document.body || activeElement === last || activeElement === null) home?.focus();
    last = null;
  });
  observer.observe(root, { childList: true, subtree: true, attributes: true, attributeFilter: ['disabled'] });
}
