import { formatQuantity } from '../formatQuantity.ts';
import type { InputRow } from '../inputRow.ts';
import { inputGroups } from '../inputRows.ts';
import type { RunView } from '../live/runView.ts';

/** Of the control circuit, which only who looks for a fault has to know. */
const CONTROL =
  /^(?:Braking by reverse|Memory relay|Ready relay|Emergency stop|Mechanical interlock|Auxiliary relays|Control$|Coils$|Overload relay|Change-over timer)/u;
/** Rows that a class does not need to answer the questions. */
const LEFT_OUT =
  /^(?:Angle of phase A|Most steps|Relative tolerance|Reference frame|Fault$|Closing scatter|Opening scatter|Shortest arcing|Source |Cable )/u;
/** Said where nothing is stated. */
const NOT_STATED = 'not stated';

/**
 * The data of a run that a class is given, in few rows: what is stated of supply, machine, load, starter, and what hands do.
 *
 * @param control with what the control circuit consists of
 */
export function givenRows(view: Pick<RunView, 'scenario' | 'units' | 'film'>, control: boolean): InputRow[] {
  const { scenario, units, film } = view;
  const rows = inputGroups(scenario, units)
    .filter(({ title }) => title !== 'Solver')
    .flatMap((group) => group.rows)
    // The machine has poles, and so has a contactor, whose arcs need no explaining here.
    .filter(({ label, value }) => label !== 'Poles' || /^\d+$/u.test(value))
    .filter(({ label, value }) => !LEFT_OUT.test(label) && value !== NOT_STATED)
    .filter(({ label }) => control || !CONTROL.test(label));
  return [
    ...rows,
    {
      label: 'Crest of the rated current',
      value: formatQuantity(film.base.currentCrest, 'A', { system: units }),
    },
  ];
}
