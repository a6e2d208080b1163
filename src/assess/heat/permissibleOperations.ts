import { raised } from '../../numeric/raised.ts';
import type { CycleName } from '../../scenario/scenario.ts';
import { dutyCycle, mostPerHour, type Running } from './dutyCycle.ts';
import type { OperationHeat } from './heat.ts';
import { cyclePeaks, type ModesByCooling, modesOf, periodicState } from './periodicState.ts';
import type { NodeName, PerNode, ThermalModel } from './thermalNetwork.ts';

/** Most operations per hour that keep every body below its limit. */
export interface PermissibleOperations {
  /** 1/h; 0 where not even rare ones are permissible. */
  readonly perHour: number;
  /** What sets the limit: the body that reaches its limit first, or time: the cycle has no rest left. */
  readonly binding: NodeName | 'time';
  /** Highest temperature of each body at that rate, °C, in the order of the model's nodes. */
  readonly peaks: PerNode;
  /** Why none is permissible, or which body was not looked at; may be empty. */
  readonly remark: string;
}

/** The rarest operations looked at, 1/h: once in fifty hours everything has cooled. */
const RAREST = 0.02;
/** Rates looked at, evenly spaced in their logarithm, before the last one that passes is refined. */
const SCAN_POINTS = 60;
/** Halvings that refine it: to 1e-10 of the rate. */
const HALVINGS = 32;

/**
 * Most operations per hour, evenly spaced, whose periodic steady state keeps every body below its limit. With a cyclic duration
 * factor rare operations mean long running, so that both rare and frequent ones may be too hot: the highest permissible rate is
 * looked for. Bodies without a known limit are left out, and the remark says so.
 */
export function permissibleOperations(
  model: ThermalModel,
  heat: OperationHeat,
  kind: CycleName,
  running: Running,
): PermissibleOperations {
  const modes = modesOf(model);
  const peaksAt = (perHour: number) =>
    periodicState(model, dutyCycle(heat, kind, running, perHour), modes).peaks;
  const excess = (perHour: number) => hottest(model, peaksAt(perHour)).excess;
  const most = mostPerHour(heat, kind, running);
  const unknown = model.nodes.filter(({ limit, limitSource }) => limit === null && limitSource !== '');
  const remark = unknown
    .map(({ name, limitSource }) => `the ${NODE_WORDS[name]} is not looked at because ${limitSource}`)
    .join('; ');
  if (excess(most) <= 0) return { perHour: most, binding: 'time', peaks: peaksAt(most), remark };
  const rarest = Math.min(RAREST, most);
  const rate = (i: number) => rarest * raised(most / rarest, i / SCAN_POINTS);
  for (let i = SCAN_POINTS - 1; i >= 0; i--) {
    if (excess(rate(i)) > 0) continue;
    let perHour = rate(i);
    let tooOften = rate(i + 1);
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = (perHour + tooOften) / 2;
      if (excess(middle) > 0) tooOften = middle;
      else perHour = middle;
    }
    const peaks = peaksAt(perHour);
    return { perHour, binding: hottest(model, peaks).name, peaks, remark };
  }
  const peaks = peaksAt(rarest);
  const why = whyNone(model, modes, heat, kind, running);
  return {
    perHour: 0,
    binding: hottest(model, peaks).name,
    peaks,
    remark: [why, remark].filter(Boolean).join('; '),
  };
}

/** Bodies in words. */
export const NODE_WORDS: Readonly<Record<NodeName, string>> = {
  winding: 'winding',
  cage: 'cage',
  outerCage: 'outer cage',
  frame: 'core and frame',
};

/** The body that is nearest to its limit, or farthest beyond it, K. */
function hottest(model: ThermalModel, peaks: PerNode): { name: NodeName; excess: number } {
  let worst = { name: model.nodes[0]!.name, excess: Number.NEGATIVE_INFINITY };
  for (const [i, { name, limit }] of model.nodes.entries())
    if (limit !== null && peaks[i]! - limit > worst.excess) worst = { name, excess: peaks[i]! - limit };
  return worst;
}

/** Names the first of three reasons that applies. */
function whyNone(
  model: ThermalModel,
  modes: ModesByCooling,
  heat: OperationHeat,
  kind: CycleName,
  running: Running,
): string {
  const words = (what: string, peaks: PerNode) => {
    const { name } = hottest(model, peaks);
    const i = model.nodes.findIndex((node) => node.name === name);
    const { limit } = model.nodes[i]!;
    return `${what} takes the ${NODE_WORDS[name]} to ${peaks[i]!.toFixed(0)} °C, above its limit of ${limit?.toFixed(0)} °C`;
  };
  const cold = model.nodes.map(() => 0);
  const withoutRunning = dutyCycle(heat, kind, { kind: 'time', time: 0 }, RAREST);
  const once = cyclePeaks(model, modes, withoutRunning, cold).rises.map((rise) => model.ambient + rise);
  if (hottest(model, once).excess > 0) return words('one operation from cold', once);
  const steady = periodicState(
    model,
    [{ name: 'running', pulse: heat.running, cooling: 'running' }],
    modes,
  ).peaks;
  if (running.kind === 'factor' && hottest(model, steady).excess > 0)
    return words('running under this load alone', steady);
  const rare = periodicState(model, dutyCycle(heat, kind, running, RAREST), modes).peaks;
  return words('even one operation in fifty hours', rare);
}
