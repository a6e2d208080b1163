import type { StarterData } from '../../scenario/scenario.ts';
import type { ControlCircuit } from '../../starter/control/controlCircuit.ts';
import { escapeMarkup } from '../plainText.ts';
import { element } from '../svgElement.ts';
import { FONT_FAMILY } from '../svgStyle.ts';
import { controlEarth, controlSupply, RETURN_END, SUPPLY_DEVICES, SUPPLY_END } from './controlSupply.ts';
import { type Drawing, together, wire, wiresOnly } from './drawing.ts';
import { type ControlLayout, layoutControl } from './layoutControl.ts';
import { legendEntries, placeLegend } from './legend.ts';
import { type Grid, onSheet, placeControl } from './placeControl.ts';
import { type PowerCircuit, powerCircuit } from './powerCircuit.ts';
import { renderDrawing } from './renderDrawing.ts';
import { FRAME, planSheet, TOP } from './sheet.ts';
import { PAPER } from './strokes.ts';
import type { SymbolSet } from './symbolSet.ts';
import { placeTitleBlock } from './titleBlock.ts';
import { circuitInWords, wiringNotes } from './wiringWords.ts';

/** How a circuit is drawn. */
export interface WiringOptions {
  /** What the power circuit consists of. */
  readonly starter: StarterData;
  /** Default: IEC 60617. */
  readonly symbols?: SymbolSet;
  /** Title of the scenario, for the title block. */
  readonly title?: string;
  /** Added to the ids in the drawing, where a page holds several. */
  readonly idSuffix?: string;
}

/**
 * Draws power and control circuit of a scheme on one sheet for A4 across, as a complete SVG document in black on white. Every
 * contact, terminal mark and reference comes from the circuit's table.
 */
export function renderWiring(circuit: ControlCircuit, options: WiringOptions): string {
  const symbols = options.symbols ?? 'iec';
  const layout = layoutControl(circuit, symbols === 'iec' ? 'ahead' : 'folded');
  const power = powerCircuit(circuit, options.starter, symbols, TOP);
  const entries = legendEntries(circuit, layout, [...power.devices, ...SUPPLY_DEVICES], symbols);
  const notes = wiringNotes(options.starter);

  const sheet = planSheet({ circuit, layout, power, symbols, entries, notes });
  const { width, height, grid } = sheet;
  const drawing = together([
    power.drawing,
    controlSupply(power, symbols),
    placeControl(circuit, layout, grid),
    rails(layout, grid, power),
    placeLegend(entries, sheet.legend.left, sheet.legend.width, sheet.legend.bottom),
    placeTitleBlock({
      scheme: circuit.title,
      scenario: options.title ?? null,
      symbols,
      notes,
      width,
      height,
      frame: FRAME,
    }),
  ]);
  const id = `wiring${options.idSuffix ?? ''}`;
  const title = `Circuit diagram: ${circuit.title}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" aria-labelledby="${id}-title ${id}-desc" font-family="${escapeMarkup(FONT_FAMILY)}" style="font-variant-numeric:tabular-nums">`,
    `<title id="${id}-title">${escapeMarkup(title)}</title>`,
    `<desc id="${id}-desc">${escapeMarkup(`Power and control circuit with terminal marks. ${circuitInWords(circuit)} ${notes.join(' ')}`)}</desc>`,
    element('rect', { width, height, fill: PAPER }),
    renderDrawing(drawing),
    '</svg>',
  ].join('\n');
}

/** Conductors from the control supply to the rails, and the earth of the one that leads back. */
function rails(layout: ControlLayout, grid: Grid, power: PowerCircuit): Drawing {
  const supply = onSheet(grid, layout.supply);
  const back = onSheet(grid, layout.back);
  const [upper, lower] = power.taps.y;
  if (grid.symbols === 'iec') {
    const x = SUPPLY_END + 16;
    return together([
      wiresOnly(
        wire(false, SUPPLY_END, upper, supply.x, upper),
        wire(false, RETURN_END, lower, x, lower, x, back.y, back.x, back.y),
      ),
      controlEarth(x, back.y, grid.symbols),
    ]);
  }
  const last = onSheet(grid, { u: layout.back.u, v: layout.coils.at(-1)!.v });
  return together([
    wiresOnly(
      wire(false, SUPPLY_END, lower, supply.x, lower, supply.x, supply.y),
      wire(false, RETURN_END, upper, back.x, upper, back.x, back.y),
      wire(false, back.x, last.y, back.x, last.y + 12),
    ),
    controlEarth(back.x, last.y + 12, grid.symbols),
  ]);
}
