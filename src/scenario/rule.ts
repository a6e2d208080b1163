import type { Path } from './place.ts';
import type { ProblemCode } from './problem.ts';
import type { PartlyValid } from './readWhatIsValid.ts';
import type { ScenarioInput } from './scenarioInput.ts';

/** What a rule between keys may look at, and where it puts what it finds. */
export interface RuleContext {
  /** The valid parts; undefined wherever a value is missing or wrong. */
  readonly input: PartlyValid<ScenarioInput>;
  /** True where the key stands in the file, valid or not. */
  isStated(...path: Path): boolean;
  report(path: Path, code: ProblemCode, message: string, expected: string): void;
}

/** A condition between several values; reports its faults to the context. */
export type Rule = (context: RuleContext) => void;
