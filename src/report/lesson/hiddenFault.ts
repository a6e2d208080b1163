import type { Edit } from '../../scenario/edit/edit.ts';
import type { StarterFault } from '../../scenario/scenario.ts';
import { decodeBase64Url, encodeBase64Url } from './base64Url.ts';
import { isStarterFault } from './isStarterFault.ts';

/** Faults in one lesson at most, as in a scenario. */
const MOST_FAULTS = 20;
/** Longest hidden text that is looked at, characters: twenty faults need a tenth of it. */
export const LONGEST_HIDDEN = 32_768;
/** Start of the sequence of bytes that the text is mixed with; any number would do. */
const SEED = 0x2b7e1516;

/**
 * Faults as a text that does not say at a glance what they are. It is no secret: whoever reads this code can turn it round, and a page
 * that runs the fault has to know it. It keeps a class honest, nothing more.
 */
export function hide(faults: readonly StarterFault[]): string {
  return encodeBase64Url(mixed(new TextEncoder().encode(JSON.stringify(faults))));
}

/** The faults of a hidden text; null where it is damaged. */
export function unhide(hidden: string): readonly StarterFault[] | null {
  if (hidden.length > LONGEST_HIDDEN) return null;
  const bytes = decodeBase64Url(hidden);
  if (bytes === null) return null;
  try {
    const value: unknown = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(mixed(bytes)));
    if (!Array.isArray(value) || value.length > MOST_FAULTS) return null;
    const faults: unknown[] = value;
    return faults.every(isStarterFault) ? faults : null;
  } catch {
    return null;
  }
}

/** The change that puts hidden faults into a scenario that is run for a student; none where the text is damaged. */
export function hiddenEdits(hidden: string | null): readonly Edit[] {
  const faults = hidden === null ? null : unhide(hidden);
  return faults === null ? [] : [{ kind: 'faults', faults }];
}

/** Bytes combined with a fixed sequence; done twice it is undone. */
function mixed(bytes: Uint8Array): Uint8Array {
  let state = SEED;
  return bytes.map((byte) => {
    // Numerical Recipes, 2nd edition, section 7.1, "quick and dirty" generator, modulo 2³².
    state = (Math.imul(1664525, state) + 1013904223) | 0;
    return byte ^ ((state >>> 16) & 0xff);
  });
}
