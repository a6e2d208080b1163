import type { Shard } from '../pool/shard.ts';
import { runList } from '../survey/draws/runList.ts';
import type { Survey } from '../survey/spec/survey.ts';
import { InputError } from './inputError.ts';

/**
 * Reads `i/n`, i from 1 to n.
 *
 * @throws InputError when it is no part, or the survey cannot be parted
 */
export function readShard(text: string, survey: Survey): Shard {
  const { task } = survey;
  const [, i, n] = /^(\d{1,8})\/(\d{1,8})$/u.exec(text) ?? [];
  const [part, of] = [Number(i), Number(n)];
  if (!(part >= 1 && part <= of))
    throw new InputError(`--shard ${text}: no such part; expected i/n with i from 1 to n, such as 2/8`);
  if (task.kind === 'worst' && of > 1)
    throw new InputError(
      `--shard ${text}: a search for the worst case cannot be parted, because what it runs next depends on all runs before; expected no --shard`,
    );
  const runs = task.kind === 'worst' ? of : runList(survey).count;
  if (of > runs) throw new InputError(`--shard ${text}: the survey has ${runs} runs; expected no more parts`);
  return { index: part - 1, of };
}
