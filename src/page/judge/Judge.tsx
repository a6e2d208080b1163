import { useSignalEffect } from '@preact/signals';
import { isConcealing, isCovered } from '../../report/lesson/lesson.ts';
import type { PageProps } from '../actions.ts';
import { ScrollRegion } from '../ScrollRegion.tsx';
import { CriteriaTable } from './CriteriaTable.tsx';
import './judge.css';

/** A judgement takes a second or more: it waits until the hand has come to rest for so long, ms. */
const REST = 600;

/** Whether plugging suits the load: over thirteen closing angles, with the other ways to stop side by side. */
export function Judge({ state, act }: PageProps) {
  const closed = isCovered(state.lesson.value) || isConcealing(state.lesson.value);
  return closed ? (
    <div class="judge">
      <h2>Does plugging suit this load?</h2>
      <p>Closed until the task of the class is revealed.</p>
    </div>
  ) : (
    <OpenJudge state={state} act={act} />
  );
}

function OpenJudge({ state, act }: PageProps) {
  useSignalEffect(() => {
    // A new run asks for a new judgement; an old one is never shown for it.
    void state.viewText.value;
    void state.units.value;
    const timer = window.setTimeout(() => act.judge(), REST);
    return () => window.clearTimeout(timer);
  });
  const judged = state.judged.value;
  const current =
    judged !== null && judged.text === state.viewText.value && judged.units === state.units.value;
  return (
    <div class="judge">
      <h2>Does plugging suit this load?</h2>
      {current && judged !== null ? (
        <>
          <p class="verdict" data-outcome={judged.judged.verdict.outcome}>
            {judged.judged.verdict.sentence}
          </p>
          <CriteriaTable verdict={judged.judged.verdict} caption="Criteria, over thirteen closing angles" />
          <ul class="remarks">
            {judged.judged.reservations.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          <h3>What else would stop it</h3>
          <ScrollRegion label="Ways to stop side by side">
            <table>
              <thead>
                <tr>
                  {judged.judged.heads.map(([head, unit]) => (
                    <th scope="col" key={head}>
                      {head}
                      {unit === '' ? null : <span class="unit">{unit}</span>}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {judged.judged.rows.map(([name, ...cells]) => (
                  <tr key={name}>
                    <th scope="row">{name}</th>
                    {cells.map((cell, i) => (
                      <td class="number" key={judged.judged.heads[i]?.[0]}>
                        {cell}
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </ScrollRegion>
          <ul class="remarks">
            {judged.judged.notes.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </>
      ) : (
        <p role="status" class="muted">
          Judging: the run is repeated over thirteen closing angles, and the load is stopped in other ways. A
          second, or some.
        </p>
      )}
    </div>
  );
}
