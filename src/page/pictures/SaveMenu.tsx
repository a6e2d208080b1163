import type { JSX } from 'preact';

/** The three forms in which a picture goes away. */
export interface SaveMenuProps {
  /** Of what, for those who hear many menus on one page. */
  readonly label: string;
  readonly saveSvg: () => void;
  readonly savePng: () => void;
  readonly saveCsv: () => void;
}

/** Saves a picture as a drawing, as pixels or as numbers. */
export function SaveMenu({ label, saveSvg, savePng, saveCsv }: SaveMenuProps): JSX.Element {
  return (
    <details class="figure-menu screen-only">
      <summary aria-label={`Save ${label}`}>Save</summary>
      <div>
        <button type="button" onClick={saveSvg}>
          Drawing (SVG)
        </button>
        <button type="button" onClick={savePng}>
          Picture (PNG)
        </button>
        <button type="button" onClick={saveCsv}>
          Numbers (CSV)
        </button>
      </div>
    </details>
  );
}
