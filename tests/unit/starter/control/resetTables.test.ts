/**
 * Emergency stop, overload relay and supply in every state of every scheme, and that nothing starts by itself after them.
 * Written from the descriptions. Source of the law: IEC 60204-1 (from memory): emergency stop overrides everything, and
 * resetting it must not start the machine; the rest is common practice, no source.
 */
import { describe } from 'vitest';
import type { SchemeName } from '../../../../src/scenario/starterData.ts';
import type { BenchAction, Contactors } from '../../../support/controlBench.ts';
import { checkTables, type TruthRow, type TruthTable } from '../../../support/truthTable.ts';

const run = (direction: 'forward' | 'reverse'): readonly TruthRow[] => [
  [`press ${direction}`, direction, 'start'],
  [`release ${direction}`, direction, 'held'],
  [`turns ${direction}`, direction, 'running'],
];
const stop = (brakes: Contactors): readonly TruthRow[] => [
  ['press stop', brakes, 'stopping'],
  ['release stop', brakes, 'stopping'],
];
const jog = (direction: 'forward' | 'reverse'): readonly TruthRow[] => [
  [`press ${direction}`, direction, 'in while the button is held'],
  [`turns ${direction}`, direction, 'running'],
];

/** State, how to get there, and which way the machine turns in it. */
interface State {
  readonly scheme: SchemeName;
  readonly state: string;
  readonly rows: readonly TruthRow[];
  readonly turns: 'forward' | 'reverse' | null;
}

const REST: readonly State[] = (
  ['throughStop', 'direct', 'antiPlugging', 'plugStop', 'plugStopBoth', 'jog'] as const
).map((scheme) => ({ scheme, state: 'at rest', rows: [], turns: null }));

const COASTING_SCHEMES: readonly State[] = (['throughStop', 'direct', 'antiPlugging'] as const).flatMap(
  (scheme): State[] => [
    { scheme, state: 'running forward', rows: run('forward'), turns: 'forward' },
    { scheme, state: 'running in reverse', rows: run('reverse'), turns: 'reverse' },
    { scheme, state: 'coasting', rows: [...run('forward'), ...stop('none')], turns: 'forward' },
  ],
);

const BRAKING_SCHEMES: readonly State[] = [
  { scheme: 'plugStop', state: 'running', rows: run('forward'), turns: 'forward' },
  { scheme: 'plugStop', state: 'braking', rows: [...run('forward'), ...stop('reverse')], turns: 'forward' },
  { scheme: 'plugStopBoth', state: 'running forward', rows: run('forward'), turns: 'forward' },
  { scheme: 'plugStopBoth', state: 'running in reverse', rows: run('reverse'), turns: 'reverse' },
  {
    scheme: 'plugStopBoth',
    state: 'braking forward rotation',
    rows: [...run('forward'), ...stop('reverse')],
    turns: 'forward',
  },
  {
    scheme: 'plugStopBoth',
    state: 'braking reverse rotation',
    rows: [...run('reverse'), ...stop('forward')],
    turns: 'reverse',
  },
  {
    scheme: 'plugStopBoth',
    state: 'reversing',
    rows: [
      ...run('forward'),
      ['press reverse', 'reverse', 'a reversal'],
      ['release reverse', 'reverse', 'held'],
    ],
    turns: 'forward',
  },
  {
    scheme: 'jog',
    state: 'braking forward rotation',
    rows: [...jog('forward'), ['release forward', 'reverse', 'braking']],
    turns: 'forward',
  },
  {
    scheme: 'jog',
    state: 'braking reverse rotation',
    rows: [...jog('reverse'), ['release reverse', 'forward', 'braking']],
    turns: 'reverse',
  },
];

/** Every scheme with the buttons that it has. */
const STARTS = REST.flatMap(({ scheme }) =>
  (['forward', 'reverse'] as const)
    .filter((way) => way === 'forward' || scheme !== 'plugStop')
    .map((way) => [scheme, way] as const),
);

const opposite = (direction: 'forward' | 'reverse' | null): Contactors =>
  direction === null ? 'none' : direction === 'forward' ? 'reverse' : 'forward';

/** What takes the coils' supply away, and what gives it back. */
const INTERRUPTIONS = [
  ['an emergency stop of category 0', 'press emergencyStop', 'release emergencyStop'],
  ['a trip of the overload relay', 'overload trips', 'overload is reset'],
  ['a loss of the supply', 'supply is lost', 'supply returns'],
] as const satisfies readonly (readonly [string, BenchAction, BenchAction])[];

/** The interruption, hands during it, its end, and then what `afterwards` says. */
function interrupted(
  { state, rows }: State,
  [what, begin, end]: (typeof INTERRUPTIONS)[number],
  control: TruthTable['control'],
  afterwards: Contactors,
  reason: string,
): TruthTable {
  const dead = afterwards === 'none';
  const byHand: readonly TruthRow[] = dead ? [['turns forward', 'none', 'turned by hand: no command']] : [];
  const outcome = dead ? 'and its end starts nothing' : 'but its end brings a contactor in';
  return {
    law: `${what} while ${state} drops both, ${outcome}`,
    control,
    rows: [
      ...rows,
      [begin, 'none', 'nothing closes a coil past it'],
      ['press forward', 'none', 'nothing closes a coil past it'],
      ['release forward', 'none', 'nothing closes a coil past it'],
      [end, afterwards, reason],
      ['stands', 'none', 'at rest'],
      ...byHand,
    ],
  };
}

describe('schemes without braking', () => {
  checkTables(
    [...REST.slice(0, 3), ...COASTING_SCHEMES].flatMap((state) =>
      INTERRUPTIONS.map((kind) =>
        interrupted(state, kind, { scheme: state.scheme }, 'none', 'the hold-in was lost'),
      ),
    ),
  );
});

describe('schemes that brake, with a memory', () => {
  checkTables(
    [...REST.slice(3), ...BRAKING_SCHEMES].flatMap((state) =>
      INTERRUPTIONS.map((kind) =>
        interrupted(
          state,
          kind,
          { scheme: state.scheme, memoryRelay: true },
          'none',
          'the hold-in and the memory were lost: it coasts',
        ),
      ),
    ),
  );
});

describe('schemes that brake, without a memory: the known exception', () => {
  checkTables(
    BRAKING_SCHEMES.flatMap((state) =>
      INTERRUPTIONS.map((kind) =>
        interrupted(
          state,
          kind,
          { scheme: state.scheme },
          opposite(state.turns),
          'the switch still shows rotation and nothing else is asked: it brakes again',
        ),
      ),
    ),
  );
});

describe('a lockout', () => {
  checkTables(
    INTERRUPTIONS.map(([what, begin, end]) => ({
      law: `does not bar braking after ${what} while coasting: it locks only a switch that is not actuated yet`,
      control: { scheme: 'plugStop' },
      lockout: true,
      rows: [
        ...run('forward'),
        [begin, 'none', 'nothing closes a coil past it'],
        [end, 'reverse', 'the switch has stayed actuated'],
        ['stands', 'none', 'the switch opens'],
      ],
    })),
  );
});

describe('a button held down through an interruption', () => {
  checkTables(
    STARTS.flatMap(([scheme, way]) =>
      INTERRUPTIONS.map(
        ([what, begin, end]): TruthTable => ({
          law: `starts ${way} when ${what} ends: a held button is a command`,
          control: { scheme },
          rows: [
            [`press ${way}`, way, 'start'],
            [begin, 'none', 'nothing closes a coil past it'],
            [end, way, 'the button is still held down'],
          ],
        }),
      ),
    ),
  );
  checkTables(
    STARTS.flatMap(([scheme, way]) =>
      INTERRUPTIONS.map(
        ([what, begin, end]): TruthTable => ({
          law: `of the ${way} button starts nothing when ${what} ends: the ready relay has dropped`,
          control: { scheme, readyRelay: true },
          rows: [
            ['press reset', 'none', 'ready'],
            ['release reset', 'none', 'ready'],
            [`press ${way}`, way, 'start'],
            [begin, 'none', 'nothing closes a coil past it'],
            [end, 'none', 'not ready'],
            ['press reset', 'none', 'not made ready while a start button is pressed'],
            ['release reset', 'none', 'not ready'],
            [`release ${way}`, 'none', 'not ready'],
            [`press ${way}`, 'none', 'still not ready'],
            [`release ${way}`, 'none', 'no command'],
            ['press reset', 'none', 'ready'],
            ['release reset', 'none', 'ready'],
            [`press ${way}`, way, 'a new command'],
          ],
        }),
      ),
    ),
  );
});

describe('the ready relay', () => {
  checkTables(
    STARTS.map(
      ([scheme, way]): TruthTable => ({
        law: `nothing starts ${way} before the reset button was pressed once, and a stop does not ask for it again`,
        control: { scheme, readyRelay: true },
        rows: [
          [`press ${way}`, 'none', 'not ready'],
          [`release ${way}`, 'none', 'no command'],
          ['press reset', 'none', 'ready; reset is no start'],
          [`press ${way}`, way, 'start'],
          ['release reset', way, 'it holds itself'],
          ['press stop', 'none', 'too slow to brake'],
          [`release ${way}`, 'none', 'no command'],
          ['release stop', 'none', 'no command'],
          [`press ${way}`, way, 'a stop leaves it ready'],
        ],
      }),
    ),
  );
  checkTables([
    {
      law: 'with reset held down it becomes ready when the start button is let go, and that is no start',
      control: { scheme: 'throughStop', readyRelay: true },
      rows: [
        [['press forward', 'press reset'], 'none', 'a start button is pressed'],
        ['release forward', 'none', 'ready; no command'],
        ['press forward', 'forward', 'a new command'],
      ],
    },
    {
      law: 'it lets a run be braked',
      control: { scheme: 'plugStop', memoryRelay: true, readyRelay: true },
      rows: [
        ['press reset', 'none', 'ready'],
        ['release reset', 'none', 'ready'],
        ...run('forward'),
        ...stop('reverse'),
        ['stands', 'none', 'the switch ends the braking'],
      ],
    },
  ]);
});
