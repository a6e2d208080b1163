import { z } from 'zod';
import { circuitKeyNames } from './circuitInput.ts';
import { unpackFault } from './fault.ts';
import { keysBesideNameplate, keysBesideTests, keysOfCircuit } from './machineInput.ts';
import type { RuleContext } from './rule.ts';

/** A machine is given in exactly one of three ways, and each way has its keys. */
export function machineWayRules(context: RuleContext): void {
  const { input, isStated, report } = context;
  // Without a group of keys there is nothing to say: the definition has refused it already.
  if (input.machine === undefined) return;
  const has = (key: string) => isStated('machine', key);
  const circuit = circuitKeyNames.filter(has);
  const way = has('nameplate') ? 'nameplate' : has('tests') ? 'tests' : 'circuit';

  if (way !== 'circuit') {
    const expected = 'a circuit, or nameplate, or tests; one of the three';
    if (way === 'nameplate' && has('tests'))
      report(['machine', 'tests'], 'conflict', 'stands beside nameplate; each gives the circuit', expected);
    for (const key of circuit)
      report(
        ['machine', key],
        'conflict',
        `stands beside ${way}, from which the circuit is estimated`,
        expected,
      );
    const again: readonly (readonly [string, string])[] = [
      ['circuitGivenAs', 'no circuit is given here'],
      ['ratedFrequency', `it is \`frequency\` under ${way}`],
      ...(way === 'nameplate' ? [['rated', 'the nameplate says it'] as const] : []),
    ];
    for (const [key, reason] of again)
      if (has(key))
        report(['machine', key], 'conflict', `has no place beside ${way}: ${reason}`, 'this key left out');
    if (way === 'nameplate' && has('inertia') && isStated('machine', 'nameplate', 'inertia'))
      report(['machine', 'inertia'], 'conflict', 'stands under nameplate as well', 'one of the two');
  }

  const needed: Readonly<Record<string, z.ZodType>> =
    way === 'circuit'
      ? keysOfCircuit
      : way === 'tests'
        ? keysBesideTests
        : isStated('machine', 'nameplate', 'speed')
          ? {}
          : keysBesideNameplate;
  for (const [key, schema] of Object.entries(needed)) {
    if (has(key)) continue;
    const fault = missing(schema);
    const other =
      way === 'circuit' && circuit.length === 0 && key === 'statorResistance'
        ? '; or `nameplate` or `tests` instead of a circuit'
        : '';
    report(['machine', key], fault.code, fault.message, `${fault.expected}${other}`);
  }
}

/** What the definition of a key says where the key is missing. */
function missing(schema: z.ZodType) {
  const issue = z.safeParse(schema, undefined).error?.issues[0];
  if (issue === undefined) throw new Error('a key that must stand accepts its absence');
  return unpackFault(issue.message);
}
