import type { RunResult } from '../measure/result.ts';
import { circuitOfStarter } from '../starter/control/schemes.ts';
import { renderWiring } from './wiring/renderWiring.ts';

/** True when buttons and a control circuit move the coils. */
export function hasControl({ scenario }: RunResult): boolean {
  return scenario.starter.control !== undefined;
}

/** Power and control circuit of a run's starter as SVG; null where commands move the coils. */
export function wiringDrawing({ scenario }: RunResult): string | null {
  const circuit = circuitOfStarter(scenario.starter);
  if (circuit === null) return null;
  return renderWiring(circuit, { starter: scenario.starter, symbols: 'iec', title: scenario.title });
}
