import { describe, expect, it } from 'vitest';
import { controlCircuit } from '../../../../src/starter/control/schemes.ts';
import { exploreControl } from '../../../../src/starter/interlocks/exploreControl.ts';
import { exploreOptions } from '../../../../src/starter/interlocks/options.ts';
import { PROPERTIES } from '../../../../src/starter/interlocks/property.ts';
import { controlOf } from './controlOf.ts';
import type { Expected } from './expectedRows.ts';
import { FORMS, type Form } from './expectedVerdicts.ts';

function found({ control: stated, lockout }: Form): Record<string, Expected> {
  const control = controlOf(stated);
  const circuit = controlCircuit(control, lockout === true);
  const options = exploreOptions(control);
  const slow = exploreControl(circuit, options).broken.map(({ property }) => property);
  const any = exploreControl(circuit, { ...options, speed: 'any' }).broken.map(({ property }) => property);
  return Object.fromEntries(
    PROPERTIES.map(({ id }) => {
      if (!options.properties.includes(id)) return [id, 'does not apply'];
      if (slow.includes(id)) return [id, 'broken'];
      return [id, any.includes(id) ? 'depends on speed' : 'holds'];
    }),
  );
}

describe('every reachable state of the control circuit bears out what its description says', () => {
  it.each(FORMS)('$name', (form) => {
    const expected = Object.fromEntries(
      Object.entries(form.expected).map(([property, [verdict]]) => [property, verdict]),
    );
    expect(found(form)).toEqual(expected);
  });
});
