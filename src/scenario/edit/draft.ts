import { findProblems } from '../findProblems.ts';
import { type Path, valueAt } from '../place.ts';
import type { ScenarioInput } from '../scenarioInput.ts';
import { removeIn, renameIn, setIn, setList } from './changeText.ts';
import type { Plain } from './writeFlow.ts';
import { readYamlText, type YamlText } from './yamlText.ts';

/** A valid scenario text, as an edit finds it. */
export interface Valid {
  readonly yaml: YamlText;
  /** What it says, in SI. */
  readonly input: ScenarioInput;
}

/** Reads a text, or says what is first wrong with it. */
export function readValid(text: string): Valid | string {
  const yaml = readYamlText(text);
  return yaml === null ? 'the text is not valid YAML or JSON' : checkYaml(yaml);
}

/** Checks a text that has been read, or says what is first wrong with it. */
export function checkYaml(yaml: YamlText): Valid | string {
  const found = findProblems(yaml.data);
  if ('input' in found) return { yaml, input: found.input };
  const [first] = found.faults;
  return first === undefined
    ? 'the text is not a valid scenario'
    : `${first.path.join('.')}: ${first.message}; expected ${first.expected}`;
}

/** A text while one edit is at work on it. */
export interface Draft {
  /** What the text said in SI before this edit. */
  readonly input: ScenarioInput;
  /** What stands somewhere now, as written; undefined where nothing does. */
  at(...path: Path): unknown;
  set(path: Path, value: Plain): void;
  /** At least one entry; those at the beginning that are as before keep their comments. */
  setList(path: Path, items: readonly Plain[]): void;
  remove(...path: Path): void;
  rename(path: Path, name: string): void;
  /** The text as changed so far, read; null where its layout was one that cannot be changed in place. */
  result(): YamlText | null;
}

/** Opens a valid text for one edit. */
export function openDraft(valid: Valid): Draft {
  let now: YamlText = valid.yaml;
  let whole = true;
  const become = (text: string) => {
    if (text === now.text) return;
    const next = readYamlText(text);
    if (next === null) whole = false;
    else now = next;
  };
  return {
    input: valid.input,
    at: (...path) => valueAt(now.data, path),
    set: (path, value) => become(setIn(now, path, value)),
    setList: (path, items) => become(setList(now, path, items)),
    remove: (...path) => become(removeIn(now, path)),
    rename: (path, name) => become(renameIn(now, path, name)),
    result: () => (whole ? now : null),
  };
}
