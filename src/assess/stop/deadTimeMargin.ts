import type { RunResult } from '../../measure/result.ts';
import { against, givenIn, limitOf } from '../againstLimit.ts';
import type { Criterion } from '../criterion.ts';
import { STANDARD_LIMITS } from '../standardLimits.ts';

/**
 * Time from the outgoing contactor's last arc to the incoming contactor's touch. Below zero it is a short circuit, whatever the
 * user states. One run shows the arc of one opening instant: what that arc lacks to the longest one must be left as margin.
 */
export function deadTimeMargin(result: RunResult): Criterion {
  const { arcMargin } = result.metrics;
  const stated = limitOf(result.scenario, 'deadTimeMargin');
  const spare = spareForLongestArc(result);
  const { leastArcMargin, longestArc } = STANDARD_LIMITS;
  const choices = [
    { limit: leastArcMargin.value, source: leastArcMargin.source },
    {
      limit: spare,
      source: `${leastArcMargin.source}; ${longestArc.source}: the arc of this run was shorter by as much`,
    },
    ...(typeof stated === 'number' ? [{ limit: stated, source: givenIn('deadTimeMargin') }] : []),
  ];
  const { limit, source } = choices.reduce((most, next) => (next.limit > most.limit ? next : most));
  const short = result.trajectory.shortCircuit;
  // The arc that the run did not live to see the end of; both contactors closed leave none at all.
  const margin =
    short === null ? arcMargin.value : Math.min(short.t - short.lastExtinction, -LEAST_SHORTFALL);
  return against(
    {
      key: 'deadTimeMargin',
      name: 'time from the last arc to the touch of the incoming contactor',
      unit: 's',
      limitIs: 'least',
      required: true,
      remark: margin !== null && margin < 0 ? 'the change-over is a line-to-line short circuit' : '',
    },
    margin === null ? { missing: arcMargin.missing ?? 'the run shows no change-over' } : { value: margin },
    limit,
    source,
  );
}

/** s; a short circuit is one however little was lacking. */
const LEAST_SHORTFALL = 1e-6;

/** By how much an arc at another opening instant may last longer than the one that decides the margin, s; 0 without arcs. */
function spareForLongestArc({ metrics, operations, scenario, trajectory }: RunResult): number {
  const { value, time, phase } = metrics.arcMargin;
  const { reversal } = operations;
  if (scenario.starter.poles === 'ideal' || reversal === null) return 0;
  if (value === null || time === undefined || phase === undefined) return 0;
  const extinction = time - value;
  const parting = trajectory.events.findLast(
    (event) =>
      event.kind === 'poleParts' &&
      event.contactor === reversal.outgoing &&
      event.phase === phase &&
      event.t <= extinction,
  );
  if (parting === undefined) return 0;
  const longest = STANDARD_LIMITS.longestArc.value / scenario.supply.frequency;
  return Math.max(0, longest - (extinction - parting.t));
}
