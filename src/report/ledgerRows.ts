import type { EnergyLedger } from '../measure/energyLedger.ts';
import type { RunResult } from '../measure/result.ts';
import { type ElementName, elementsOf } from './elements.ts';
import type { Quantity } from './palette.ts';

/** A term of the energy ledger with its name and what kind of energy it is. */
export interface LedgerRow {
  readonly label: string;
  /** J */
  readonly value: number;
  readonly quantity: Quantity;
}

interface Term {
  readonly key: Exclude<keyof EnergyLedger, 'rotorLoss' | 'throughput' | 'residual'>;
  readonly label: string;
  readonly quantity: Quantity;
  /** Shown only where the scenario has it, or the term is not zero. */
  readonly element?: ElementName;
}

const BEFORE_ROTOR: readonly Term[] = [
  { key: 'electricalIn', label: 'Electrical energy in', quantity: 'electrical' },
  { key: 'sourceLoss', label: 'Heat in the source', quantity: 'heat' },
  { key: 'cableLoss', label: 'Heat in the cable', quantity: 'heat', element: 'cable' },
  {
    key: 'lineResistorLoss',
    label: 'Heat in the line resistors',
    quantity: 'heat',
    element: 'lineResistors',
  },
  { key: 'statorLoss', label: 'Stator heat', quantity: 'heat' },
];

const AFTER_ROTOR: readonly Term[] = [
  {
    key: 'rotorResistorLoss',
    label: 'Heat in the slip-ring resistors',
    quantity: 'heat',
    element: 'rotorResistors',
  },
  { key: 'ironLoss', label: 'Iron loss', quantity: 'heat', element: 'core' },
  { key: 'magneticChange', label: 'Change of magnetic energy', quantity: 'stored' },
  { key: 'interruptionLoss', label: 'Released by chopped currents', quantity: 'heat' },
  { key: 'airGapWork', label: 'Work at the air gap', quantity: 'work' },
  { key: 'kineticChange', label: 'of this, change of kinetic energy', quantity: 'stored' },
  {
    key: 'twistChange',
    label: 'of this, change of twist energy',
    quantity: 'stored',
    element: 'coupling',
  },
  { key: 'frictionLoss', label: 'of this, friction', quantity: 'work' },
  { key: 'windageLoss', label: 'of this, windage of the motor', quantity: 'work', element: 'windage' },
  { key: 'loadWork', label: 'of this, load', quantity: 'work' },
  { key: 'gearLoss', label: 'of this, heat in the gear', quantity: 'heat', element: 'gear' },
  { key: 'couplingLoss', label: 'of this, heat in the coupling', quantity: 'heat', element: 'coupling' },
];

/** The terms of the energy ledger; those of elements that the scenario does not have are left out. */
export function ledgerRows(result: RunResult): LedgerRow[] {
  const { ledger } = result;
  const cages = ledger.rotorLoss.map(
    (value, i): LedgerRow => ({
      label: ledger.rotorLoss.length === 1 ? 'Rotor heat' : `Rotor heat, cage ${i + 1}`,
      value,
      quantity: 'heat',
    }),
  );
  return [...rowsOf(result, BEFORE_ROTOR), ...cages, ...rowsOf(result, AFTER_ROTOR)];
}

function rowsOf(result: RunResult, terms: readonly Term[]): LedgerRow[] {
  const elements = elementsOf(result.scenario);
  return terms
    .map(({ key, ...term }) => ({ ...term, value: result.ledger[key] }))
    .filter(({ element, value }) => element === undefined || elements.has(element) || value !== 0)
    .map(({ label, value, quantity }) => ({ label, value, quantity }));
}

/** "that work = change of kinetic energy + friction + load": the terms the work at the air gap goes into. */
export function mechanicalBalance(result: RunResult): string {
  const parts = ledgerRows(result)
    .filter(({ label }) => label.startsWith('of this, '))
    .map(({ label }) => label.replace('of this, ', ''));
  return `that work = ${parts.join(' + ')}`;
}
