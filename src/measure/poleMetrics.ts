import type { ContactorName } from '../starter/starter.ts';
import { absoluteCharge } from './absoluteCharge.ts';
import { found, type Measurement, type MetricGroup, missing, PHASE_NAMES } from './measurement.ts';
import { NO_REVERSAL } from './reversalMetrics.ts';

/** What each pole of the outgoing and of the plugging contactor interrupts, at its first opening after the command. */
export function poleMetrics(m: Measurement): MetricGroup {
  const { reversal } = m.operations;
  if (reversal === null)
    return {
      ...contactorMetrics(m, 'run', null, 0),
      ...contactorMetrics(m, 'plug', null, 0),
    };
  return {
    ...contactorMetrics(m, 'run', reversal.outgoing, reversal.parting ?? reversal.command),
    ...contactorMetrics(m, 'plug', reversal.incoming, reversal.touch ?? reversal.command),
  };
}

function contactorMetrics(
  m: Measurement,
  prefix: 'run' | 'plug',
  contactor: ContactorName | null,
  since: number,
): MetricGroup {
  const group: MetricGroup = {};
  const { events } = m.quadrature.trajectory;
  for (const phase of PHASE_NAMES) {
    const keys = {
      current: `${prefix}Pole${phase}PartingCurrent`,
      time: `${prefix}Pole${phase}ClearingTime`,
      charge: `${prefix}Pole${phase}ArcCharge`,
    } as const;
    const isPole = (kind: string, from: number) =>
      events.find(
        (event) =>
          event.kind === kind && event.contactor === contactor && event.phase === phase && event.t >= from,
      );
    const parting = isPole('poleParts', since);
    if (parting === undefined) {
      const why = contactor === null ? NO_REVERSAL : 'the pole does not part in this run';
      for (const key of Object.values(keys)) group[key] = missing(key, why);
      continue;
    }
    const current = m.quadrature.trajectory.at(parting.t, 'left')[`i${phase}`];
    group[keys.current] = found(keys.current, Math.abs(current), { time: parting.t, phase });
    const clearing = isPole('poleClears', parting.t);
    if (clearing === undefined) {
      const why = 'the pole still arcs when the run ends';
      group[keys.time] = missing(keys.time, why);
      group[keys.charge] = missing(keys.charge, why);
      continue;
    }
    group[keys.time] = found(keys.time, clearing.t - parting.t, { time: clearing.t, phase });
    group[keys.charge] = found(keys.charge, absoluteCharge(m.quadrature, phase, parting.t, clearing.t), {
      phase,
    });
  }
  return group;
}
