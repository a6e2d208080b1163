import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decodeBase64Url, encodeBase64Url } from '../../../../src/report/lesson/base64Url.ts';
import { FAULT_CHOICES, isFaultChoice, judgeFault } from '../../../../src/report/lesson/faultChoices.ts';
import { hiddenEdits, hide, unhide } from '../../../../src/report/lesson/hiddenFault.ts';
import { FAULT_KINDS, isStarterFault } from '../../../../src/report/lesson/isStarterFault.ts';
import { EVERY_FAULT } from './faultyViews.ts';

describe('a hidden fault', () => {
  it('comes back as it went in, alone or with others', () => {
    fc.assert(
      fc.property(fc.subarray([...EVERY_FAULT]), (faults) => {
        expect(unhide(hide(faults))).toEqual(faults);
      }),
      { numRuns: 50, seed: 6 },
    );
  });

  it('does not stand in plain text, nor in plain base64', () => {
    for (const fault of EVERY_FAULT) {
      const hidden = hide([fault]);
      const plain = Buffer.from(hidden, 'base64url').toString('latin1');
      for (const word of [fault.kind, 'kind', 'contactor', 'forward'])
        expect(hidden.includes(word) || plain.includes(word), word).toBe(false);
    }
  });

  it('that is damaged is nothing, never an exception', () => {
    const hidden = hide(EVERY_FAULT);
    fc.assert(
      fc.property(fc.nat(hidden.length - 1), fc.constantFrom('A', '_', '!', ''), (at, letter) => {
        const damaged = hidden.slice(0, at) + letter + hidden.slice(at + 1);
        const faults = unhide(damaged);
        if (faults !== null) expect(faults.every(isStarterFault)).toBe(true);
      }),
      { numRuns: 200, seed: 6 },
    );
    for (const text of ['', 'x', '!!!!', 'A'.repeat(40_000)]) expect(unhide(text)).toBeNull();
  });

  it('is put into the scenario by one edit, and none where there is nothing to put in', () => {
    const [fault] = EVERY_FAULT;
    expect(hiddenEdits(hide([fault!]))).toEqual([{ kind: 'faults', faults: [fault] }]);
    expect(hiddenEdits(null)).toEqual([]);
    expect(hiddenEdits('?')).toEqual([]);
  });
});

it('values from outside that only look like a fault are none', () => {
  for (const value of [
    null,
    [],
    'lostPhase',
    { kind: 'lostPhase', phase: 'D', from: 1 },
    { kind: 'lostPhase', phase: 'A', from: Number.NaN },
    { kind: 'lostPhase', phase: 'A' },
    { kind: 'weldedContactor', contactor: 'forward', extra: 1 },
    { kind: 'toString' },
    { kind: 'supplyLost', from: 1, until: 'never' },
  ])
    expect(isStarterFault(value), JSON.stringify(value)).toBe(false);
});

describe('an answer about the fault', () => {
  it('can be every kind of fault, or none', () => {
    expect(Object.keys(FAULT_CHOICES).sort()).toEqual(
      ['none', ...new Set(EVERY_FAULT.map(({ kind }) => kind))].sort(),
    );
    expect(FAULT_KINDS.every(isFaultChoice)).toBe(true);
    expect(isFaultChoice('toString')).toBe(false);
  });

  it.each(EVERY_FAULT.map((fault) => [fault.kind, fault] as const))(
    'is right for %s alone',
    (kind, fault) => {
      for (const choice of [...FAULT_KINDS, 'none' as const]) {
        const { right, words } = judgeFault(choice, [fault]);
        expect(right).toBe(choice === kind);
        expect(words).toMatch(right ? /^Right: / : /^Not so: /u);
      }
    },
  );

  it('“no fault” is right where nothing is wrong, and any kind is not', () => {
    expect(judgeFault('none', []).right).toBe(true);
    expect(judgeFault('deadPole', []).right).toBe(false);
  });

  it('that names one of several says so', () => {
    expect(judgeFault('lostPhase', EVERY_FAULT.slice(0, 2)).words).toMatch(/^Right, one of 2: /u);
  });
});

describe('base64url', () => {
  it('is what Node writes and reads', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 100 }), (bytes) => {
        const text = encodeBase64Url(bytes);
        expect(text).toBe(Buffer.from(bytes).toString('base64url'));
        expect([...(decodeBase64Url(text) ?? [])]).toEqual([...bytes]);
      }),
      { seed: 6 },
    );
  });

  it('with a foreign letter, an impossible length or bits left over is refused', () => {
    for (const text of ['A', 'AA=', 'AA+A', 'AB', 'AAC', 'é']) expect(decodeBase64Url(text), text).toBeNull();
  });
});
