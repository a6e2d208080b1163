import type { ComponentChildren } from 'preact';

/** Something wider than a narrow page: it scrolls sideways by itself, by the keyboard too. */
export function ScrollRegion({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard (WCAG 2.1.1)
    <section class="scroll" aria-label={label} tabIndex={0}>
      {children}
    </section>
  );
}
