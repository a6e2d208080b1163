import { describe, expect, it } from 'vitest';
import { allContacts, type ControlCircuit } from '../../../../src/starter/control/controlCircuit.ts';
import { controlCircuit } from '../../../../src/starter/control/schemes.ts';
import { exploreControl } from '../../../../src/starter/interlocks/exploreControl.ts';
import { exploreOptions } from '../../../../src/starter/interlocks/options.ts';
import { controlOf } from './controlOf.ts';
import { MUTATION_FORMS, type MutationForm } from './expectedMutations.ts';
import { mutations } from './removeContact.ts';

function survivors({ control: stated, lockout }: MutationForm): string[] {
  const control = controlOf(stated);
  const circuit = controlCircuit(control, lockout === true);
  const options = exploreOptions(control);
  // Some interlocks back the mechanical one up: they show where it is missing.
  const table = (one: ControlCircuit, mechanicalInterlock: boolean) =>
    exploreControl(one, { ...options, mechanicalInterlock })
      .broken.map(({ property }) => property)
      .join();
  const healthy = table(circuit, true);
  const missing = table(circuit, false);
  const all = mutations(circuit);
  expect(all.length).toBe(allContacts(circuit).length);
  return all
    .filter((one) => table(one.circuit, true) === healthy && table(one.circuit, false) === missing)
    .map(({ contact }) => contact);
}

describe('taking a contact out changes a verdict, unless another contact does its work', () => {
  it.each(MUTATION_FORMS)('$name', (form) => {
    expect(survivors(form).sort()).toEqual(Object.keys(form.redundant).sort());
  });
});
