import type { Reflection } from 'typedoc';

/** Name from the entry point on; a signature goes by the name of what it belongs to. */
export function placeOf(reflection: Reflection): string {
  const steps: string[] = [];
  for (let at: Reflection | undefined = reflection; at !== undefined && !at.isProject(); at = at.parent)
    if (!at.isSignature() && at.name !== '__type') steps.unshift(at.name);
  return steps.join('.');
}
