import { useEffect } from 'preact/hooks';
import { givenRows } from '../report/lesson/givenRows.ts';
import type { PageProps } from './actions.ts';

/** In place of the run while a class predicts it: what is given. */
export function Covered({ state, act }: PageProps) {
  const view = state.view.value;
  useEffect(() => {
    if (view !== null) act.painted(view);
  }, [view, act]);
  if (view === null) return null;
  return (
    <section class="spine covered" aria-label="The run, covered">
      <h2>{view.scenario.title}</h2>
      <p>{view.scenario.description}</p>
      <p>
        Pictures and numbers of this run are covered until all questions are revealed. Write down what you
        expect first.
      </p>
      <table>
        <caption>What is given</caption>
        <tbody>
          {givenRows(view, false).map(({ label, value }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              <td>{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
