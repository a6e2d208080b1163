import type { LaboratorySheet } from '../../survey/laboratory/laboratory.ts';
import type { LaboratoryOptions } from './laboratoryOptions.ts';

const SECONDS_PER_MINUTE = 60;

/** How long the trials take, and what may go where there is less time; on a blank sheet without the times of one trial, which tell readings. */
export function timeSentences(
  { leastTime, steps }: Pick<LaboratorySheet, 'leastTime' | 'steps'>,
  { blank }: Pick<LaboratoryOptions, 'blank'>,
): readonly string[] {
  if (typeof leastTime === 'string')
    return [`Least time of the trials: not worked out, because ${leastTime}.`];
  const { parts, total } = leastTime;
  if (parts.length === 0) return [];
  const number = (key: string) => steps.findIndex((step) => step.key === key) + 1;
  const each = parts.map(
    (part) => `step ${number(part.step)}: ${part.trials}${blank ? '' : ` × ${Math.round(part.each)} s`}`,
  );
  const shorter = parts.flatMap(({ step, trials, each: time }) => {
    const half = Math.floor(trials / 2);
    const saved = minutes((trials - half) * time);
    if (step === 'plugStop')
      return [
        `${half} plug stops instead of ${trials} save ${saved} and show less of the scatter; the pause is not shortened`,
      ];
    return step === 'creep' ? [`step ${number(step)} can be left out (${minutes(trials * time)})`] : [];
  });
  return [
    `Time of the trials with their pauses: at least ${Math.ceil(total / SECONDS_PER_MINUTE)} min (${blank ? 'trials of ' : ''}${each.join('; ')}). Connecting, warming up, measuring without trials and writing come on top.` +
      (shorter.length === 0 ? '' : ` With less time: ${shorter.join('; ')}.`),
  ];
}

function minutes(seconds: number): string {
  return `about ${Math.round(seconds / SECONDS_PER_MINUTE)} min`;
}
