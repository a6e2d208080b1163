import { Comment, type ProjectReflection, ReflectionKind } from 'typedoc';

/** Public functions that do what somebody has published: their words name the source. */
const PUBLISHED = [
  'quadratureOf',
  'runList',
  'runTrajectory',
  'sensitivityOf',
  'steadyState',
  'summaryOf',
  'torsionalFrequency',
  'twoPoleSteadyState',
  'worstSearch',
];

/** Those among the functions of published methods that are gone, or do not name a source. */
export function sourceDefects(
  project: ProjectReflection,
  published: readonly string[] = PUBLISHED,
): string[] {
  const functions = project.getReflectionsByKind(ReflectionKind.CallSignature);
  return published
    .filter(
      (name) =>
        !functions.some(
          (one) =>
            one.name === name &&
            Comment.combineDisplayParts(one.comment?.summary).match(/\bSource: \S/u) !== null,
        ),
    )
    .map((name) => `${name} names no source`);
}
