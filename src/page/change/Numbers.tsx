import { comparedNumbers } from '../../report/live/comparedNumbers.ts';
import type { PageProps } from '../actions.ts';
import { ScrollRegion } from '../ScrollRegion.tsx';
import './numbers.css';

/** Every figure of the run with its change against the pinned run. */
export function Numbers({ state }: PageProps) {
  const view = state.view.value;
  if (view === null) return null;
  const pinned = state.pinned.value;
  return (
    <section class="numbers" aria-label="Numbers of the run">
      <ScrollRegion label="All figures of the run">
        <table>
          <caption class="visually-hidden">
            All figures of the run{pinned === null ? '' : ', with their change against the pinned run'}
          </caption>
          <thead>
            <tr>
              <th scope="col">Quantity</th>
              <th scope="col" class="number">
                This run
              </th>
              {pinned === null ? null : (
                <>
                  <th scope="col" class="number">
                    Pinned
                  </th>
                  <th scope="col" class="number">
                    Change
                  </th>
                </>
              )}
            </tr>
          </thead>
          {comparedNumbers(view, pinned).map(({ title, rows }) => (
            <tbody key={title}>
              <tr>
                <th scope="rowgroup" colSpan={pinned === null ? 2 : 4} class="group-title">
                  {title}
                </th>
              </tr>
              {rows.map((row) => (
                <tr key={row.key}>
                  <th scope="row">
                    <details>
                      <summary>{row.label}</summary>
                      <p>
                        {row.definition} {row.detail}
                      </p>
                    </details>
                  </th>
                  <td class="number">
                    <data value={row.value === null ? '' : String(row.value)} data-key={row.key}>
                      {row.text}
                    </data>
                  </td>
                  {pinned === null ? null : (
                    <>
                      <td class="number">{row.pinnedText}</td>
                      <td class="number change">{row.changeText}</td>
                    </>
                  )}
                </tr>
              ))}
            </tbody>
          ))}
        </table>
      </ScrollRegion>
    </section>
  );
}
