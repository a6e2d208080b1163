import { describe, expect, it } from 'vitest';
import { METRIC_KEYS } from '../../../src/measure/metric.ts';
import type { RunResult } from '../../../src/measure/result.ts';
import { energyFigure } from '../../../src/report/energyFigure.ts';
import { ledgerRows, mechanicalBalance } from '../../../src/report/ledgerRows.ts';
import { renderTerminal } from '../../../src/report/renderTerminal.ts';
import { metricTables } from '../../../src/report/reportTables.ts';
import { leftOut, methodOf } from '../../../src/report/reportText.ts';
import { elasticRun, fullScenario } from './fakeElements.ts';
import { fakeMetrics, fakeRun, fakeScenario } from './fakeRun.ts';

const ELEMENT_TERMS = [
  'Heat in the cable',
  'Heat in the line resistors',
  'Heat in the slip-ring resistors',
  'Iron loss',
  'of this, change of twist energy',
  'of this, windage of the motor',
  'of this, heat in the gear',
  'of this, heat in the coupling',
];
const ELEMENT_METRICS = [
  'Largest coupling torque',
  'Torsional natural frequency',
  'Heat in the line resistors',
  'Heat in the slip-ring resistors',
];

const full = fakeRun({ scenario: fullScenario() });
const labels = (run: RunResult) => ledgerRows(run).map((row) => row.label);

describe('the energy ledger', () => {
  it('of a plain scenario has the rows it always had', () => {
    expect(labels(fakeRun())).toEqual([
      'Electrical energy in',
      'Heat in the source',
      'Stator heat',
      'Rotor heat',
      'Change of magnetic energy',
      'Released by chopped currents',
      'Work at the air gap',
      'of this, change of kinetic energy',
      'of this, friction',
      'of this, load',
    ]);
  });

  it.each(ELEMENT_TERMS)('has the row "%s" with its element, even where it is zero', (label) => {
    expect(labels(full)).toContain(label);
  });

  it('shows a term that is not zero whatever the scenario says', () => {
    const run = fakeRun();
    expect(labels({ ...run, ledger: { ...run.ledger, couplingLoss: 12 } })).toContain(
      'of this, heat in the coupling',
    );
  });

  it('says which terms make up the work at the air gap', () => {
    expect(mechanicalBalance(fakeRun())).toBe('that work = change of kinetic energy + friction + load');
    expect(mechanicalBalance(full)).toBe(
      'that work = change of kinetic energy + change of twist energy + friction + windage of the motor + load + heat in the gear + heat in the coupling',
    );
  });

  it('is drawn with the terms of the elements', () => {
    const ledger = { ...full.ledger, gearLoss: 900 };
    const [panel] = energyFigure({ ...full, ledger }, { units: 'SI' }).panels;
    const bars = panel?.kind === 'bars' ? panel.rows.map((row) => `${row.label} ${row.text}`) : [];
    expect(bars).toContain('of this, heat in the gear 0.900 kJ');
  });
});

describe('figures of elements', () => {
  it('that the scenario does not have are neither shown nor said to be missing', () => {
    const table = metricTables(fakeRun(), 'SI');
    for (const label of ELEMENT_METRICS) expect(table).not.toContain(label);
    const present = metricTables(full, 'SI');
    for (const label of ELEMENT_METRICS) expect(present).toContain(label);
  });

  it('a voltage dip is shown in per cent, and not at all on a stiff source', () => {
    const metrics = {
      ...fakeMetrics(),
      plugVoltageDip: { definition: 'Dip.', value: 0.1062, unit: '1', time: 1.551 },
    };
    const plain = fakeScenario();
    const stiff = { ...plain, supply: { ...plain.supply, sourceResistance: 0, sourceInductance: 0 } };
    const cells = (run: RunResult) => metricTables(run, 'SI').replace(/<[^>]*>/gu, ' ');
    expect(cells(fakeRun({ metrics }))).toMatch(/Deepest voltage dip at the terminals\s+10\.6 %/u);
    expect(cells(fakeRun({ metrics, scenario: stiff }))).not.toContain('Deepest voltage dip');
  });

  it('of a coupling stand in the terminal', () => {
    const out = renderTerminal(elasticRun(), { units: 'SI', colour: false });
    expect(out).toMatch(/^Plug: coupling torque +−812 N·m {2}−3\.46 × rated, at 1\.5750 s$/mu);
    expect(out).toMatch(/^Torsional natural frequency +21\.5 Hz$/mu);
    expect(renderTerminal(fakeRun(), { units: 'SI', colour: false })).not.toMatch(/coupling|torsional/iu);
  });

  it('of no metric get lost in the tables of a scenario that has everything', () => {
    const shown = metricTables(full, 'SI').match(/<tr><th scope="row"/gu)?.length;
    expect(shown).toBe(METRIC_KEYS.length);
  });
});

describe('the method', () => {
  it('names every element that is there', () => {
    const text = methodOf(fullScenario()).join(' ');
    for (const word of [/magnetising curve/u, /leakage paths saturate/u, /Iron loss/u, /connected in star/u])
      expect(text).toMatch(word);
    for (const word of [/Line resistors/u, /slip rings/u, /cable/u, /gear/u, /two masses/u, /Lost phases/u])
      expect(text).toMatch(word);
    expect(methodOf(fakeScenario()).join(' ')).not.toMatch(
      /magnetising curve|slip rings|cable is|two masses/u,
    );
  });

  it('no longer says that what is modelled is left out', () => {
    const plain = leftOut(fakeScenario()).join(' ');
    expect(plain).toMatch(/Magnetic saturation: the circuit is linear/u);
    expect(plain).toMatch(/Iron loss/u);
    expect(plain).toMatch(/Shaft twist/u);
    expect(leftOut(fullScenario()).join(' ')).not.toMatch(
      /Magnetic saturation|Saturation of|Iron loss|Shaft twist/u,
    );
  });

  it('says which saturation is left out where only one is modelled', () => {
    const { machine, ...rest } = fakeScenario();
    const { mainSaturation, leakageSaturation } = fullScenario().machine;
    const main = leftOut({ ...rest, machine: { ...machine, mainSaturation: mainSaturation! } });
    expect(main[0]).toMatch(/^Saturation of the leakage paths: they are linear/u);
    const leakage = leftOut({ ...rest, machine: { ...machine, leakageSaturation: leakageSaturation! } });
    expect(leakage[0]).toMatch(/^Saturation of the main flux/u);
  });
});
