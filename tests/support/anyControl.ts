import fc from 'fast-check';
import type {
  Action,
  ButtonAction,
  ButtonName,
  ControlData,
  Scenario,
  StarterFault,
  ZeroSpeedSwitchData,
} from '../../src/scenario/scenario.ts';

/** Any double of the range, all digits; minus zero is not a quantity. */
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null });
const sometimes = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });

const BRAKING = ['plugStop', 'plugStopBoth', 'jog'];
const contactor = fc.constantFrom('forward' as const, 'reverse' as const);

const control: fc.Arbitrary<ControlData> = fc
  .record({
    scheme: fc.constantFrom(
      'throughStop' as const,
      'direct' as const,
      'plugStop' as const,
      'plugStopBoth' as const,
      'antiPlugging' as const,
      'jog' as const,
    ),
    memoryRelay: fc.boolean(),
    readyRelay: fc.boolean(),
    emergencyStop: fc.oneof(
      fc.constant({ category: 0 as const }),
      fc.record({ category: fc.constant(1 as const), limit: between(1e-6, 60) }),
    ),
    changeoverTimer: between(0, 60),
    mechanicalInterlock: fc.boolean(),
    relayTime: between(0, 1),
    scanTime: between(0, 1),
    coilVoltage: orNull(fc.record({ pickUp: between(0.5001, 1), dropOut: between(0.1, 0.5) })),
    overload: orNull(
      fc.record({
        setting: between(1e-3, 1e5),
        tripClass: fc.constantFrom('5' as const, '10A' as const, '10' as const, '20' as const, '30' as const),
        start: fc.constantFrom('cold' as const, 'warm' as const),
        memory: fc.constantFrom('kept' as const, 'lost' as const),
      }),
    ),
  })
  .map((any) =>
    BRAKING.includes(any.scheme)
      ? any
      : { ...any, memoryRelay: false, emergencyStop: { category: 0 as const } },
  );

const speeds = { dropOutSpeed: between(1e-3, 5), pickUpSpeed: between(5.001, 10) };
const theSwitch: fc.Arbitrary<ZeroSpeedSwitchData> = fc
  .tuple(
    fc.record({ ...speeds, delay: between(0, 1) }),
    sometimes(fc.record(speeds)),
    fc.constantFrom(undefined, true as const),
  )
  .map(([base, reverse, lockout]) => ({ ...base, ...(reverse && { reverse }), ...(lockout && { lockout }) }));

const BUTTONS = [
  'forward',
  'reverse',
  'stop',
  'reset',
  'emergencyStop',
  'overloadTest',
  'overloadReset',
] as const satisfies readonly ButtonName[];
const MOMENTARY: readonly ButtonName[] = ['overloadTest', 'overloadReset'];

/** Nothing twice at one instant; two buttons may share one. */
const buttons: fc.Arbitrary<ButtonAction[]> = fc.uniqueArray(
  fc.record({
    at: fc.oneof(between(0, 100), fc.constantFrom(0, 1)),
    do: fc.constantFrom('press' as const, 'release' as const),
    button: fc.constantFrom(...BUTTONS),
  }),
  { minLength: 1, maxLength: 8, selector: (one) => `${one.at} ${one.do} ${one.button}` },
);

/** Faults of which there is one at most. */
const single: fc.Arbitrary<StarterFault[]> = fc
  .tuple(
    sometimes(fc.record({ kind: fc.constant('weldedContactor' as const), contactor })),
    sometimes(
      fc.record({
        kind: fc.constant('zeroSpeedSwitch' as const),
        mode: fc.constantFrom('stuckClosed' as const, 'stuckOpen' as const, 'doesNotPickUp' as const),
      }),
    ),
    sometimes(
      fc.record({
        kind: fc.constant('auxiliaryContact' as const),
        contactor,
        contact: fc.constantFrom('holdIn' as const, 'interlock' as const),
        stuck: fc.constantFrom('open' as const, 'closed' as const),
      }),
    ),
    sometimes(fc.constant({ kind: 'overloadNeverTrips' as const })),
    sometimes(
      fc.record({
        kind: fc.constant('supplyLost' as const),
        from: between(0, 100),
        until: orNull(between(100.5, 3600)),
      }),
    ),
    sometimes(fc.constant({ kind: 'mechanicalInterlockMissing' as const })),
  )
  .map((all) => all.filter((one) => one !== undefined));

/** Everything that a scenario of commands turns into one of buttons with. */
const additions = fc.record({ control: sometimes(control), theSwitch, buttons, single });

type Additions = typeof additions extends fc.Arbitrary<infer T> ? T : never;

/** The scenarios with faults of the control side, and every other one with a control circuit and buttons. */
export function withControl(scenarios: fc.Arbitrary<Scenario>): fc.Arbitrary<Scenario> {
  return fc.tuple(scenarios, additions).map(([scenario, added]) => {
    const whole = added.control === undefined ? scenario : controlled(scenario, added.control, added);
    return withFaults(whole, added.single);
  });
}

function controlled(scenario: Scenario, data: ControlData, { theSwitch: found, buttons: all }: Additions) {
  const { scheme } = data;
  const needsSwitch = scheme === 'antiPlugging' || BRAKING.includes(scheme);
  const allowed = all.filter(
    ({ do: verb, button }) =>
      !(button === 'reverse' && scheme === 'plugStop') &&
      !(button === 'reset' && !data.readyRelay) &&
      !(MOMENTARY.includes(button) && (data.overload === null || verb === 'release')),
  );
  // Anti-plugging rests on a switch that no lockout hides.
  const { lockout, ...unlocked } = found;
  const seen = scheme === 'antiPlugging' || lockout === undefined ? unlocked : found;
  const actions: Action[] = allowed.length > 0 ? allowed : [{ at: 0, do: 'press', button: 'forward' }];
  return {
    ...scenario,
    starter: {
      ...scenario.starter,
      changeoverDelay: 0,
      changeoverGivenAs: 'default' as const,
      zeroSpeedSwitch: needsSwitch || scenario.starter.zeroSpeedSwitch !== null ? seen : null,
      control: data,
    },
    initial: initialFor(scheme, scenario.initial),
    actions: actions.toSorted((a, b) => a.at - b.at),
  };
}

function initialFor(scheme: ControlData['scheme'], initial: Scenario['initial']): Scenario['initial'] {
  if (scheme === 'jog') return 'rest';
  return scheme === 'plugStop' && initial === 'runningReverse' ? 'runningForward' : initial;
}

/** Those of parts that are there. */
function withFaults(scenario: Scenario, more: readonly StarterFault[]): Scenario {
  const { starter } = scenario;
  const { control: data, zeroSpeedSwitch, faults = [] } = starter;
  const fits = more.filter((fault) => {
    switch (fault.kind) {
      case 'weldedContactor':
        return !faults.some((one) => 'pole' in one && one.contactor === fault.contactor);
      case 'zeroSpeedSwitch':
        return zeroSpeedSwitch !== null;
      case 'auxiliaryContact':
        if (data === undefined) return false;
        return (
          fault.contact === 'interlock' ||
          (data.scheme !== 'jog' && !(data.scheme === 'plugStop' && fault.contactor === 'reverse'))
        );
      case 'overloadNeverTrips':
        return data !== undefined && data.overload !== null;
      case 'mechanicalInterlockMissing':
        return data?.mechanicalInterlock === true;
      default:
        return true;
    }
  });
  return fits.length === 0
    ? scenario
    : { ...scenario, starter: { ...starter, faults: [...faults, ...fits] } };
}
