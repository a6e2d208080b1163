import type { PhaseVariableRun } from './phaseVariableModel.ts';

/**
 * Energy balance of the windings and of the shaft over the whole run, each term on its own:
 * larger of the two errors over the sum of the magnitudes of all terms.
 */
export function ledgerResidual(run: PhaseVariableRun): number {
  const { circuit, scenario, steps } = run;
  const { index } = circuit;
  const first = steps[0];
  const last = steps.at(-1);
  if (!first || !last) return 0;
  const a = first.y0;
  const b = last.y1;
  const change = (i: number) => b[i]! - a[i]!;
  const squares = change(index.square) + change(index.square + 1) + change(index.square + 2);

  circuit.setMode(first.mode);
  const storedBefore = circuit.magneticEnergy(a);
  circuit.setMode(last.mode);
  const magnetic = circuit.magneticEnergy(b) - storedBefore;
  const { supply } = scenario;
  const out = [
    // Every terminal of the runs compared is alone on its supply phase, so feeder and line carry the same current.
    (supply.sourceResistance + (supply.cable?.resistance ?? 0)) * squares,
    change(index.lineResistorHeat),
    change(index.statorHeat),
    change(index.rotorResistorHeat),
    change(index.ironHeat),
    magnetic,
    run.chopLoss,
  ];
  for (let c = 0; c < index.cages; c++) out.push(change(index.rotorHeat + c));
  const gap = change(index.airGapWork);
  const { train } = circuit;
  const mechanical = [
    train.kinetic(b) - train.kinetic(a),
    train.elasticEnergy(b, last.mode) - train.elasticEnergy(a, first.mode),
    change(index.motorLoss),
    change(index.loadWork),
    change(index.gearLoss),
    change(index.damperLoss),
  ];
  const sum = (terms: readonly number[]) => terms.reduce((x, term) => x + term, 0);
  const electricalError = change(index.electricalIn) - gap - sum(out);
  const mechanicalError = gap - sum(mechanical);
  const throughput = sum([...out, gap, ...mechanical].map(Math.abs));
  return throughput === 0 ? 0 : Math.max(Math.abs(electricalError), Math.abs(mechanicalError)) / throughput;
}
