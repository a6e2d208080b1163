import { describe, expect, it } from 'vitest';
import { concealed, isNoticed, isTelling } from '../../../../src/report/lesson/concealed.ts';
import { isIn, takeReading } from '../../../../src/report/lesson/readings.ts';
import { tellingLines } from '../../../../src/report/lesson/tellingLines.ts';
import type { StarterFault } from '../../../../src/scenario/scenario.ts';
import { EVERY_FAULT, textsOf, viewWith } from './faultyViews.ts';

/** The words of the task, written before looking at what the program says; dead time is an ordinary quantity. */
const WORDS = /weld|lost|stuck|\bdead\b(?![ -]time)|\bnever\b|missing/iu;

const name = (fault: StarterFault) => JSON.stringify(fault);

describe('a run with a hidden fault', () => {
  it.each(EVERY_FAULT.map((fault) => [name(fault), fault] as const))('does not name %s', (_, fault) => {
    const view = viewWith([fault]);
    const { scenario: _whole, ...open } = view;
    // A switch that sees no speed shows only in what does not happen.
    const silent = fault.kind === 'zeroSpeedSwitch' && fault.mode === 'doesNotPickUp';
    expect(textsOf(open).some((text) => WORDS.test(text))).toBe(!silent);
    const shown = concealed(view);
    const { scenario, ...rest } = shown;
    expect(textsOf(rest).filter((text) => WORDS.test(text))).toEqual([]);
    expect(scenario.starter.faults).toBeUndefined();
    // Poles move with the armature: nobody sees them in a starter that is in service.
    for (const contactor of ['forward', 'reverse'])
      expect(
        new Set(
          shown.film.channels
            .filter(({ of }) => of.kind === 'pole' && of.contactor === contactor)
            .map(({ changes }) => JSON.stringify(changes)),
        ).size,
      ).toBeLessThanOrEqual(1);
    expect(
      shown.time.panels.flatMap((panel) =>
        panel.kind === 'states' ? panel.rows.map((row) => row.label) : [],
      ),
    ).toEqual(['speed switch']);
    // What is measured stays, to the last bit.
    expect(shown.film.columns).toBe(view.film.columns);
    expect(shown.numbers.flatMap(({ rows }) => rows.map(({ value }) => value))).toEqual(
      view.numbers.flatMap(({ rows }) => rows.map(({ value }) => value)),
    );
  });

  it('differs from one without a fault in nothing but what the machine does', () => {
    const healthy = concealed(viewWith([]));
    const faulty = concealed(viewWith([{ kind: 'overloadNeverTrips' }]));
    expect(textsOf({ ...faulty, scenario: null })).toEqual(textsOf({ ...healthy, scenario: null }));
  });

  it.each(EVERY_FAULT.map((fault) => [name(fault), fault] as const))(
    'lists what is noticed from outside and nothing of coils, poles, relays or the switch: %s',
    (_, fault) => {
      const own = viewWith([fault]).film.events;
      const listed = concealed(viewWith([fault])).film.events;
      expect(listed.filter(({ text }) => /coil|pole|switch|memory|ready relay|timer/u.test(text))).toEqual(
        [],
      );
      const outside = (list: typeof own) =>
        list.filter(({ text }) =>
          /^[^:]*(?: button | contactor is in$| contactor is out$|passes through zero)/u.test(text),
        );
      expect(outside(listed)).toEqual(outside(own));
    },
  );

  it('ended early is said in plain words that name no cause', () => {
    expect(concealed({ ...viewWith([]), usable: false }).alarms).toEqual([
      'The run ended before it was told to; what follows is not shown.',
    ]);
  });

  it('reads the same whether it is concealed or not', () => {
    const view = viewWith([{ kind: 'weldedPole', contactor: 'forward', pole: 'A' }]);
    for (const t of [0.1, 1, 1.9, 2.5])
      expect(takeReading(concealed(view).film, t)).toEqual(takeReading(view.film, t));
  });

  it('takes a contactor whose coil is driven by hand to be in while any pole is closed', () => {
    const view = viewWith([]);
    const pole = (phase: 'A' | 'B', on: number, off: number) => ({
      of: { kind: 'pole' as const, contactor: 'forward' as const, phase },
      changes: [
        { t: 0, value: 'open' as const },
        { t: on, value: 'closed' as const },
        { t: off, value: 'arcing' as const },
        { t: off + 0.004, value: 'open' as const },
      ],
    });
    const { channels } = concealed({
      ...view,
      film: { ...view.film, channels: [pole('A', 0.1, 0.5), pole('B', 0.102, 0.6)] },
    }).film;
    expect([0.05, 0.101, 0.3, 0.55, 0.601, 0.7].map((t) => isIn(channels, 'forward', t))).toEqual([
      false,
      true,
      true,
      true,
      false,
      false,
    ]);
  });
});

it.each([
  ['forward coil energised', true],
  ['forward coil released: plug', true],
  ['forward coil released: the supply is lost', false],
  ['overload relay trips: 8.1 s at 5 × its setting', true],
  ['control voltage falls below drop-out', true],
  ['the mechanical brake sets', true],
  ['reverse coil released: zero-speed switch opens (forward) at 46 r/min', false],
  ['reverse coil energised: forward memory relay picks up', false],
  ['the zero-speed switch has opened before the reverse coil’s turn', false],
  ['nothing to plug: the shaft stands', false],
])('beside a starter in service "%s" is noticed: %s', (text, noticed) => {
  expect(isNoticed(text)).toBe(noticed);
});

it('dead time is told, a dead pole is not', () => {
  expect(isTelling('Dead time, parting to touch')).toBe(false);
  expect(isTelling('pole A is dead')).toBe(true);
});

it('lines of a text that speak of a fault are found with their numbers', () => {
  expect(tellingLines('title: Saw\n# the contactor is welded\nstarter: {}')).toEqual([
    { line: 2, text: '# the contactor is welded' },
  ]);
});

it('the list of faults is not among them, the comment behind it is', () => {
  const text =
    'starter:\n  faults:\n  - kind: welded pole\n    pole: A\n  # not so dead\n  poles: arcing # never';
  expect(tellingLines(text).map(({ line }) => line)).toEqual([5, 6]);
  expect(tellingLines('  faults: [{ kind: lost phase }]')).toEqual([]);
});
