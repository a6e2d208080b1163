import { editedExample } from './workFolder.ts';

/** The example that plugs well, plugged as soon as it is up to speed: a quick run with everything in it. */
export function shortRun(...edits: readonly (readonly [string, string])[]): string {
  return editedExample(['{ at: 1 s, do: plug }', '{ at: 0.35 s, do: plug }'], ...edits);
}
