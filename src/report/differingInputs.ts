import { givenOrigins, type Origin } from '../scenario/origin.ts';
import { renderScenario } from '../scenario/renderScenario.ts';
import type { ScenarioWithOrigins } from '../scenario/resolveScenario.ts';

/** A scenario as far as its inputs matter. */
export type ComparedScenario = Pick<ScenarioWithOrigins, 'scenario' | 'origins'>;

/** An input in which two scenarios differ. */
export interface DifferingInput {
  /** Keys of the scenario file joined by dots, list positions from 0. */
  readonly path: string;
  /** As written, or as it was filled in; null: the scenario has no such input. */
  readonly a: string | null;
  readonly b: string | null;
}

/** Told by the heads of a comparison. */
const HEADS: readonly string[] = ['title', 'description'];

/**
 * The inputs in which two scenarios differ and that at least one of them states, section by section: what neither states
 * follows from others. Where the scenario holds an input as it is written, values are compared, not words: 0.4 kV is 400 V.
 */
export function differingInputs(a: ComparedScenario, b: ComparedScenario): readonly DifferingInput[] {
  const one = inputsOf(a);
  const other = inputsOf(b);
  const paths = [...new Set([...one.keys(), ...other.keys()])].filter((path) => !HEADS.includes(path));
  const sections = [...new Set(paths.map(sectionOf))];
  return paths
    .toSorted((p, q) => sections.indexOf(sectionOf(p)) - sections.indexOf(sectionOf(q)))
    .filter((path) => differ(one.get(path), other.get(path)))
    .map((path) => ({ path, a: one.get(path)?.words ?? null, b: other.get(path)?.words ?? null }));
}

/** One input of a scenario. */
interface Input {
  /** As written or filled in. */
  readonly words: string;
  /** In SI with all digits; null where the scenario holds it in another form. */
  readonly held: string | null;
  readonly given: boolean;
}

function inputsOf({ scenario, origins }: ComparedScenario): ReadonlyMap<string, Input> {
  const held = new Map(givenOrigins(renderScenario(scenario)).map(({ path, value }) => [path, value]));
  return new Map(
    origins.map(({ path, value, origin }: Origin): [string, Input] => [
      path,
      { words: value, held: held.get(path) ?? null, given: origin === 'given' },
    ]),
  );
}

function differ(a: Input | undefined, b: Input | undefined): boolean {
  if (a?.given !== true && b?.given !== true) return false;
  if (a === undefined || b === undefined) return true;
  // The same words may stand for another value, as ohms do at another frequency: that follows from what differs there.
  return a.words !== b.words && (a.held === null || a.held !== b.held);
}

function sectionOf(path: string): string {
  return path.split('.')[0] ?? '';
}
