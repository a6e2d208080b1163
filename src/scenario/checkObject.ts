import { maxDepth, maxValues } from './limits.ts';
import type { Fault } from './problem.ts';

/**
 * Looks at an object before it is validated, without recursion: depth (a cycle is endless depth) and number of values.
 *
 * @param source what was handed over in place of text
 * @returns the reason to refuse it, or null
 */
export function checkObject(source: unknown): Fault | null {
  const waiting: { value: unknown; depth: number }[] = [{ value: source, depth: 0 }];
  let seen = 0;
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    seen += 1;
    if (seen + waiting.length > maxValues) {
      return { code: 'tooLarge', message: `has more than ${maxValues} values`, expected: 'a scenario' };
    }
    const { value, depth } = next;
    if (typeof value !== 'object' || value === null) continue;
    if (depth >= maxDepth) {
      return {
        code: 'tooDeep',
        message: `nests deeper than ${maxDepth} levels`,
        expected: 'about five levels',
      };
    }
    const children: unknown[] = Object.values(value);
    if (children.length > maxValues) {
      return { code: 'tooLarge', message: `has more than ${maxValues} values`, expected: 'a scenario' };
    }
    for (const child of children) waiting.push({ value: child, depth: depth + 1 });
  }
  return null;
}
