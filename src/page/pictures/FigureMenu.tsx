import type { JSX } from 'preact';
import { cutFigure } from '../../report/canvas/cutFigure.ts';
import { exportName } from '../../report/canvas/exportName.ts';
import { figureCsv } from '../../report/canvas/figureCsv.ts';
import type { PaintOptions } from '../../report/canvas/layoutFigure.ts';
import type { Span } from '../../report/canvas/zoom.ts';
import type { FigureSpec } from '../../report/figureSpec.ts';
import { renderSvg } from '../../report/renderSvg.ts';
import { download, figurePng } from './download.ts';
import { SaveMenu } from './SaveMenu.tsx';

/** What is saved. */
export interface FigureMenuProps {
  readonly spec: FigureSpec;
  /** Stretch that is shown; null: all. */
  readonly span: Span | null;
  /** Scenario's file name. */
  readonly fileName: string;
  /** How the picture is painted at present; null: not yet. */
  readonly printed: () => PaintOptions | null;
}

/** Saves what a picture shows as a drawing, as pixels or as numbers. */
export function FigureMenu({ spec, span, fileName, printed }: FigureMenuProps): JSX.Element {
  const name = (ending: string) => exportName(fileName, spec.id, ending);
  const savePng = async () => {
    const options = printed();
    const png = options === null ? null : await figurePng(spec, options);
    if (png !== null) download(name('png'), png, 'image/png');
  };
  return (
    <SaveMenu
      label={spec.title}
      saveSvg={() =>
        download(name('svg'), renderSvg(cutFigure(spec, span), { theme: 'light' }), 'image/svg+xml')
      }
      savePng={() => void savePng()}
      saveCsv={() => download(name('csv'), figureCsv(cutFigure(spec, span)), 'text/csv;charset=utf-8')}
    />
  );
}
