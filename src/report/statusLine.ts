import type { RunResult } from '../measure/result.ts';
import { isSuccessful } from '../simulate/status.ts';
import { formatInstant } from './formatQuantity.ts';
import { cleanText } from './plainText.ts';

/** What stands first when a run did not end well. */
export function statusLine(result: RunResult): string {
  const { status } = result;
  if (isSuccessful(status))
    return result.warnings.map(cleanText)[0] ?? 'These figures must not be used as they stand.';
  const message = cleanText(status.message);
  const at = message.includes(formatInstant(status.time)) ? '' : `, at ${formatInstant(status.time)}`;
  return `The run did not end as asked${at}: ${message}`;
}
