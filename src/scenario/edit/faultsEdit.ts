import { SCHEME_OF_WORD } from '../controlWords.ts';
import { renderFault } from '../renderFault.ts';
import type { StarterFault } from '../starterData.ts';
import type { Draft } from './draft.ts';
import type { Plain } from './writeFlow.ts';

/** Gives the installation these faults and no others. Whether they can be is for the rules of a scenario to say. */
export function setFaults(draft: Draft, faults: readonly StarterFault[]): null {
  if (faults.length === 0) draft.remove('starter', 'faults');
  else draft.setList(['starter', 'faults'], faults.map(renderFault));
  return null;
}

/** Takes out the faults of what is not there any more. */
export function dropImpossibleFaults(draft: Draft): void {
  const written = draft.at('starter', 'faults');
  if (!Array.isArray(written)) return;
  const kept = written.filter((fault: Plain) => isPossible(draft, fault as Readonly<Record<string, Plain>>));
  if (kept.length === written.length) return;
  if (kept.length === 0) draft.remove('starter', 'faults');
  else draft.setList(['starter', 'faults'], kept);
}

function isPossible(draft: Draft, fault: Readonly<Record<string, Plain>>): boolean {
  const at = (key: string) => draft.at('starter', 'control', key);
  const word = at('scheme') as keyof typeof SCHEME_OF_WORD | undefined;
  const scheme = word === undefined ? null : SCHEME_OF_WORD[word];
  switch (fault.kind) {
    case 'zero-speed switch':
      return (draft.at('starter', 'zeroSpeedSwitch') ?? 'off') !== 'off';
    case 'overload never trips':
      return scheme !== null && (at('overload') ?? 'none') !== 'none';
    case 'mechanical interlock missing':
      return scheme !== null && at('mechanicalInterlock') !== false && at('mechanicalInterlock') !== 'no';
    case 'auxiliary contact': {
      if (scheme === null) return false;
      const holdsIn = fault.contact === 'hold-in';
      return !(holdsIn && (scheme === 'jog' || (scheme === 'plugStop' && fault.contactor === 'reverse')));
    }
    default:
      return true;
  }
}
