/** What failures during a stop lead to, against closed forms. */
import { describe, expect, it } from 'vitest';
import { failureConsequences } from '../../../../src/assess/stop/failureConsequences.ts';
import type { RunResult } from '../../../../src/measure/result.ts';
import type { LoadTorque } from '../../../../src/scenario/scenario.ts';
import { shaftOf } from '../../../../src/shaft/shaft.ts';
import { pluggedRun } from '../../../support/judgedRun.ts';
import { KRAUSE } from '../../../support/textbookMachines.ts';
import { expectWithin } from '../../../support/tolerance.ts';

const run = pluggedRun();
const J = KRAUSE.hp3.machine.inertia + 0.03;
const SYNCHRONOUS = KRAUSE.hp3.synchronousSpeed;

/** The same run with another load from the command on: what follows is worked out, not simulated. */
const loaded = (...torques: LoadTorque[]): RunResult => {
  const scenario = { ...run.scenario, load: { inertia: 0.03, torques } };
  return { ...run, scenario, trajectory: { ...run.trajectory, scenario, shaft: shaftOf(scenario) } };
};
const of = (result: RunResult) => {
  const found = failureConsequences(result);
  if (found === null) throw new Error('no consequences');
  return found;
};
const omega = run.trajectory.at(0.02).speed;

describe('supply or reversing contactor fails', () => {
  it('dry friction: coasts Jω/T and Jω²/2T', () => {
    const { coast, sentences } = of(run);
    expectWithin(coast.time, J * omega, { relative: 1e-8 }, 'time');
    expectWithin(coast.angle, (J * omega ** 2) / 2, { relative: 1e-8 }, 'angle');
    const seconds = Number((J * omega).toPrecision(3));
    const turns = Number(((J * omega ** 2) / 4 / Math.PI).toPrecision(3));
    expect(sentences[0]).toBe(
      `If the supply or the reversing contactor fails at the command, nothing brakes: the shaft coasts to rest in ${seconds} s and ${turns} revolutions.`,
    );
  });

  it('a fan: approaches rest, 99·J/kω to one per cent', () => {
    const { coast, sentences } = of(loaded({ kind: 'fan', coefficient: 1e-4 }));
    expectWithin(coast.time, (99 * J) / 1e-4 / omega, { relative: 1e-8 }, 'time');
    expect(sentences[0]).toMatch(
      /coasts to 1 % of its speed in .* and without dry friction only approaches rest\.$/,
    );
  });

  it('a load that overhauls, or none at all', () => {
    expect(of(loaded({ kind: 'gravity', torque: -5 })).sentences[0]).toMatch(
      /the load keeps the shaft turning\.$/,
    );
    expect(of(loaded()).sentences[0]).toContain('is not known, because no torque is given that slows it');
  });

  it('a mechanical brake is not counted, and that is said', () => {
    const brake = { torque: 5, delay: 0.1, sets: 'afterPlugging' } as const;
    const scenario = { ...run.scenario, starter: { ...run.scenario.starter, brake } };
    const braked = of({ ...run, scenario });
    expect(braked.sentences[0]).toMatch(/The mechanical brake is not counted in this\.$/);
    expectWithin(braked.coast.time, J * omega, { relative: 1e-8 }, 'time');
  });
});

describe('at rest', () => {
  const friction: LoadTorque = { kind: 'friction', torque: 1, breakaway: 3 };
  it.each<[string, LoadTorque[], number, string | null]>([
    ['nothing pulls', [friction], 0, null],
    ['friction holds', [friction, { kind: 'gravity', torque: 2 }], 0, 'friction alone would hold it'],
    ['nothing holds', [friction, { kind: 'gravity', torque: 4 }], 0, 'At rest nothing holds the load'],
    ['the brake holds', [friction, { kind: 'gravity', torque: 4 }], 2, 'only the brake holds it'],
  ])('%s', (_name, torques, torque, words) => {
    const result = loaded(...torques);
    const brake = { torque, delay: 0.1, sets: 'afterPlugging' } as const;
    const scenario = {
      ...result.scenario,
      starter: { ...result.scenario.starter, ...(torque > 0 && { brake }) },
    };
    const { sentences } = of({ ...result, scenario });
    const about = sentences.filter((sentence) => sentence.startsWith('At rest'));
    expect(about).toHaveLength(words === null ? 0 : 1);
    if (words !== null) expect(about[0]).toContain(words);
  });
});

describe('the switch does not open', () => {
  it('the machine runs up the other way, to where a simulated reversal ends', () => {
    const reversed = pluggedRun({ actions: [{ at: 0.02, do: 'startReverse' }] });
    const { reverseSpeed, sentences } = of(run);
    // The run ends within 0.2 per cent of synchronous speed of the steady speed.
    expectWithin(
      reverseSpeed,
      reversed.trajectory.at(reversed.trajectory.tEnd).speed,
      { absolute: 2e-3 * SYNCHRONOUS },
      'reverse speed',
    );
    const share = Number(((-100 * (reverseSpeed ?? 0)) / SYNCHRONOUS).toPrecision(3));
    expect(sentences.at(-2)).toContain(`to ${share} % of synchronous speed`);
  });

  it('a load it cannot drive is said', () => {
    // Pull-out torque 62 N·m.
    const { reverseSpeed, sentences } = of(loaded({ kind: 'gravity', torque: -70 }));
    expect(reverseSpeed).toBeNull();
    expect(sentences.at(-2)).toContain('cannot drive');
  });
});

it('plugging neither holds nor is fail-safe', () => {
  expect(of(run).sentences.at(-1)).toBe(
    'Plugging neither holds nor is fail-safe: it brakes only while supply, reversing contactor and zero-speed switch work.',
  );
});

it('a run without a reversal has no consequences', () => {
  expect(failureConsequences({ ...run, operations: { ...run.operations, reversal: null } })).toBeNull();
});
