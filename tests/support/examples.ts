import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { PROJECT } from './commandLine.ts';

/** The folders of examples, one for each kind of user. */
export const USERS = ['engineer', 'teacher', 'maintenance-planner'] as const;

/** Every example (beside the page that says what they show): its folder from the project's with forward slashes, and its name. */
export const EXAMPLES = USERS.flatMap((user) =>
  readdirSync(path.join(PROJECT, 'examples', user))
    .filter((name) => name !== 'README.md')
    .map((name) => ({
      name,
      file: `examples/${user}/${name}`,
    })),
);

/** An example's path from the project's folder, with forward slashes; the name alone says which, with or without `.yaml`. */
export function examplePath(name: string): string {
  const found = EXAMPLES.filter((example) => example.name === name || example.name === `${name}.yaml`);
  if (found.length !== 1) throw new Error(`${found.length} examples have the name "${name}"`);
  return found[0]!.file;
}

/** Text of an example. */
export function exampleText(name: string): string {
  return readFileSync(path.join(PROJECT, examplePath(name)), 'utf8');
}

const isSurvey = (name: string) => /^ask:/mu.test(exampleText(name));
const yaml = EXAMPLES.map(({ name }) => name).filter((name) => name.endsWith('.yaml'));

/** Names of the examples that are scenarios. */
export const EXAMPLE_SCENARIOS = yaml.filter((name) => !isSurvey(name));

/** Names of the examples that are surveys. */
export const EXAMPLE_SURVEYS = yaml.filter(isSurvey);
