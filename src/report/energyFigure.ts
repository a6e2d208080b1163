import type { RunResult } from '../measure/result.ts';
import { computeExtent, paddedDomain } from './envelope.ts';
import type { BarRow, FigureSpec } from './figureSpec.ts';
import { displayUnit, formatNumber, formatQuantity } from './formatQuantity.ts';
import { ledgerRows, mechanicalBalance } from './ledgerRows.ts';
import type { FigureOptions } from './timeFigure.ts';

/** Share of the throughput below which a bar would be thinner than its outline. */
const VISIBLE = 1e-4;

/** Where the energy of the run went, as bars from zero. Terms too small to see are left out. */
export function energyFigure(result: RunResult, options: FigureOptions): FigureSpec {
  const unit = displayUnit('J', { system: options.units });
  const rows = ledgerRows(result)
    .filter((row) => Math.abs(row.value) > VISIBLE * result.ledger.throughput)
    .map(
      (row): BarRow => ({
        label: row.label,
        value: row.value * unit.perSi,
        text: formatQuantity(row.value, 'J', { system: options.units }),
        quantity: row.quantity,
      }),
    );
  return {
    id: 'energy',
    title: energyTitle(result, options),
    note: `Electrical energy in = the heats + change of magnetic energy + work at the air gap; ${mechanicalBalance(result)}.`,
    description: `Energy ledger of the run: ${rows.map((row) => `${row.label} ${row.text}`).join('; ')}.`,
    x: {
      label: `Energy over the run (${unit.label})`,
      domain: paddedDomain(computeExtent(rows.map((row) => row.value))),
    },
    panels: [{ kind: 'bars', rows }],
    marks: [],
    bands: [],
  };
}

function energyTitle(result: RunResult, options: FigureOptions): string {
  const { ledger } = result;
  const rotor = ledger.rotorLoss.reduce((sum, loss) => sum + loss, 0);
  const drawn = formatQuantity(ledger.electricalIn, 'J', { system: options.units });
  const share = (100 * rotor) / ledger.electricalIn;
  if (!Number.isFinite(share) || share < 0 || share > 100) return `The run draws ${drawn} from the supply`;
  return `Of ${drawn} drawn from the supply, ${formatNumber(share)} % becomes heat in the rotor`;
}
