import { z } from 'zod';
import { packTypeFault } from './fault.ts';
import { keyword } from './keyword.ts';

const EXPECTED = '`yes` or `no` (or `true`, `false`)';

/**
 * Whether something is there; comes out as true or false.
 *
 * @param about for the editor
 */
export function yesNo(about: { readonly about: string; readonly default: 'yes' | 'no' }) {
  return z
    .union([
      keyword(['yes', 'no'], EXPECTED),
      z.boolean({ error: ({ input }) => packTypeFault(input, EXPECTED) }),
    ])
    .meta({ description: `${about.about}: yes or no.`, examples: ['yes', true], default: about.default })
    .transform((written) => written === true || written === 'yes');
}
