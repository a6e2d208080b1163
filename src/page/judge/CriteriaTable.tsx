import { NOT_JUDGED_BECAUSE } from '../../assess/criterion.ts';
import type { LiveCriterion, LiveVerdict } from '../../report/live/runView.ts';
import { ScrollRegion } from '../ScrollRegion.tsx';

/** The remark beside the outcome, which already says that a criterion is not judged; a key of the file is called one. */
function remarkOf({ remark }: LiveCriterion): string {
  return remark.startsWith(NOT_JUDGED_BECAUSE)
    ? remark.replace(NOT_JUDGED_BECAUSE, 'because ').replace(/\b[a-z]+\.[a-z]+\b/iu, '“$&” in the file')
    : remark;
}

/** Every criterion with its value, its limit and what came of it; the outcome is a word, never a colour alone. */
export function CriteriaTable({ verdict, caption }: { verdict: LiveVerdict; caption: string }) {
  return (
    <ScrollRegion label={caption}>
      <table class="criteria">
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Criterion</th>
            <th scope="col" class="number">
              value
            </th>
            <th scope="col" class="number">
              limit
            </th>
            <th scope="col">outcome</th>
          </tr>
        </thead>
        <tbody>
          {verdict.criteria.map((criterion) => (
            <tr key={criterion.key} data-outcome={criterion.outcome}>
              <th scope="row">{criterion.name}</th>
              <td class="number">{criterion.value}</td>
              <td class="number">
                {criterion.limit === '—'
                  ? '—'
                  : `${criterion.limitIs === 'most' ? '≤' : '≥'} ${criterion.limit}`}
              </td>
              <td>
                <span class="outcome">{criterion.words}</span>
                {criterion.remark === '' ? null : <span class="remark"> {remarkOf(criterion)}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollRegion>
  );
}
