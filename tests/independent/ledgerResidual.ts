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
  const out = [
    // Every terminal of the runs compared is alone on its supply phase, so source and stator carry the same current.
    scenario.supply.sourceResistance * squares,
    scenario.machine.Rs * squares,
    magnetic,
    run.chopLoss,
  ];
  for (let c = 0; c < index.cages; c++) out.push(change(index.rotorHeat + c));
  const gap = change(index.airGapWork);
  const kinetic = 0.5 * circuit.inertia * (b[index.omega]! ** 2 - a[index.omega]! ** 2);
  const mechanical = [kinetic, change(index.frictionLoss), change(index.loadWork)];
  const sum = (terms: readonly number[]) => terms.reduce((x, term) => x + term, 0);
  const electricalError = change(index.electricalIn) - gap - sum(out);
  const mechanicalError = gap - sum(mechanical);
  const throughput = sum([...out, gap, ...mechanical].map(Math.abs));
  return throughput === 0 ? 0 : Math.max(Math.abs(electricalError), Math.abs(mechanicalError)) / throughput;
}
