import type { Problem } from '../../index.ts';
import { placeWords } from '../../scenario/edit/placeWords.ts';

/** What is wrong with a text, each with its place; pressing one goes there. */
export function Problems({
  problems,
  onGo,
}: {
  readonly problems: readonly Problem[];
  readonly onGo: (problem: Problem) => void;
}) {
  if (problems.length === 0) return null;
  return (
    <ul class="problems alarm" aria-label="Problems">
      {problems.map((problem) => {
        const words = placeWords(problem);
        return (
          <li key={words}>
            {problem.line === null ? (
              <span>
                {problem.file}: {words}
              </span>
            ) : (
              <button type="button" onClick={() => onGo(problem)}>
                {words}
              </button>
            )}
          </li>
        );
      })}
    </ul>
  );
}
