import type { RowStatus } from '../../survey/spec/survey.ts';
import type { ReasonGroup, Reasons } from '../../survey/spread/reasons.ts';
import type { SurveySummary } from '../../survey/spread/summary.ts';

/** The gravest first. */
const STATUSES: readonly RowStatus[] = ['failed', 'unbalanced', 'refused'];
/** What a failed run says when its plant is in danger, the gravest first; others come after. */
const DANGERS = [/short circuit/iu, /driven the shaft/iu, /run up in the other direction/iu] as const;

/** The reason that bears most on the plant, not the one that came most often; null where every run can be used. */
export function gravestReason({ groups }: Reasons): ReasonGroup | null {
  return groups.toSorted((a, b) => gravity(a) - gravity(b))[0] ?? null;
}

function gravity({ status, example }: ReasonGroup): number {
  const danger = DANGERS.findIndex((words) => words.test(example));
  const rank = danger === -1 || status !== 'failed' ? DANGERS.length : danger;
  return STATUSES.indexOf(status) * (DANGERS.length + 1) + rank;
}

const STATUS_WORDS: Readonly<Record<RowStatus, string>> = {
  good: 'can be used',
  failed: 'ended badly',
  unbalanced: 'without a closed energy balance',
  refused: 'with values that no scenario can have',
};

/** For the head of a report: how many runs failed and of what; null where every run can be used. */
export function failureSentence({ runs, byStatus, reasons }: SurveySummary): string | null {
  const grave = gravestReason(reasons);
  if (grave === null) return null;
  const counts = STATUSES.flatMap((status) =>
    byStatus[status] === 0 ? [] : [`${byStatus[status]} ${STATUS_WORDS[status]}`],
  );
  const times = grave.count === 1 ? 'one run' : `${grave.count} runs`;
  return `${runs - byStatus.good} of ${runs} runs cannot be used: ${counts.join(', ')}. Gravest reason (${times}, first run ${grave.firstRun}): ${grave.example}`;
}
