import { EXAMPLES } from './examples.ts';
import { isLinkProblem, readLink } from './link.ts';
import type { FirstInput } from './store.ts';

/** What the page opens with, and what must be said of the link that it was opened by; '' is nothing. */
export interface Opening {
  readonly first: FirstInput;
  readonly trouble: string;
}

/** What the address asks for: the scenario, the units and the lesson that a link carries, else the first example. */
export async function firstInput(hash: string): Promise<Opening> {
  const example = EXAMPLES[0];
  const plain: FirstInput = {
    text: example?.text ?? '',
    fileName: example?.fileName ?? '',
    units: 'SI',
    task: 'push',
    largePrint: false,
    lesson: null,
  };
  if (hash === '' || hash === '#') return { first: plain, trouble: '' };
  const link = await readLink(hash);
  if (isLinkProblem(link)) return { first: plain, trouble: link.message };
  const task = link.lesson === null ? 'push' : 'class';
  return { first: { ...plain, ...link, fileName: 'linked.yaml', task }, trouble: '' };
}
