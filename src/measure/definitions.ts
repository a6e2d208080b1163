import type { MetricKey } from './metric.ts';

/** SI unit and meaning of every metric. */
export const DEFINITIONS: Readonly<
  Record<MetricKey, { readonly unit: string; readonly definition: string }>
> = {
  startPeakCurrent: {
    unit: 'A',
    definition:
      'Largest instantaneous current of any phase from the start command to the next action (or the end).',
  },
  startWorstCycleCurrent: {
    unit: 'A',
    definition:
      'Largest r.m.s. value of any phase current over any one supply period inside the start; the time is the end of that period.',
  },
  startMaximumTorque: { unit: 'N·m', definition: 'Most positive air-gap torque during the start.' },
  startMinimumTorque: { unit: 'N·m', definition: 'Most negative air-gap torque during the start.' },
  startCouplingTorque: {
    unit: 'N·m',
    definition:
      'Torque of largest magnitude in the elastic coupling during the start, seen at the motor shaft; positive when the motor drives forward.',
  },
  startVoltageDip: {
    unit: '1',
    definition:
      'Supply voltage less the lowest voltage at the motor terminals (behind line resistors, where there are any) during the start, over the supply voltage; voltages as in the lowest terminal voltage.',
  },
  startTime: {
    unit: 's',
    definition:
      'From the first touch that completes a circuit to 95 % of the speed at which circuit and load balance.',
  },
  startI2tA: {
    unit: 'A²·s',
    definition:
      'Integral of the squared current of phase A from the start command until the machine is up to speed (as in the run-up time; or to the next action).',
  },
  startI2tB: {
    unit: 'A²·s',
    definition:
      'Integral of the squared current of phase B from the start command until the machine is up to speed (as in the run-up time; or to the next action).',
  },
  startI2tC: {
    unit: 'A²·s',
    definition:
      'Integral of the squared current of phase C from the start command until the machine is up to speed (as in the run-up time; or to the next action).',
  },
  startStatorHeat: {
    unit: 'J',
    definition:
      'Heat in the stator winding from the start command until the machine is up to speed (as in the run-up time; or to the next action).',
  },
  startRotorHeat: {
    unit: 'J',
    definition:
      'Heat in the rotor cage or cages from the start command until the machine is up to speed (as in the run-up time; or to the next action).',
  },
  startRotorHeatMultiple: {
    unit: '1',
    definition: 'Rotor heat of the start over the kinetic energy of rotor and load when it is up to speed.',
  },
  commandToTouch: {
    unit: 's',
    definition:
      'From the reversing command to the first touch of the incoming contactor that completes a circuit.',
  },
  partingToTouch: {
    unit: 's',
    definition:
      'From the first parting of the outgoing contactor to that touch: the dead time of the contacts.',
  },
  extinctionToTouch: {
    unit: 's',
    definition: 'From the last arc extinction of the outgoing contactor to that touch: the currentless time.',
  },
  arcMargin: {
    unit: 's',
    definition:
      'Smallest time, over the terminals of the two exchanged phases, from the extinction of the outgoing pole to the touch of the incoming pole on the same terminal; negative: line-to-line short circuit.',
  },
  residualVoltage: {
    unit: '1',
    definition:
      'Magnitude of the terminal-voltage space vector just before that touch, over the crest of the phase voltage of the supply.',
  },
  residualAngle: {
    unit: 'rad',
    definition:
      'Angle from the residual-voltage vector to the supply vector of the incoming connection at that touch, −π to π.',
  },
  supplyAngleAtTouch: {
    unit: 'rad',
    definition: 'Supply angle ωt + φ of phase A at that touch, 0 to 2π.',
  },
  plugPeakCurrent: {
    unit: 'A',
    definition:
      'Largest instantaneous current of any phase from the reversing command to the next action (or the end).',
  },
  plugWorstCycleCurrent: {
    unit: 'A',
    definition:
      'Largest r.m.s. value of any phase current over any one supply period between the reversing command and the next action (or the end); the time is the end of that period.',
  },
  plugMinimumTorque: {
    unit: 'N·m',
    definition: 'Most negative air-gap torque from the reversing command to the next action (or the end).',
  },
  plugMaximumTorque: {
    unit: 'N·m',
    definition: 'Most positive air-gap torque from the reversing command to the next action (or the end).',
  },
  plugCouplingTorque: {
    unit: 'N·m',
    definition:
      'Torque of largest magnitude in the elastic coupling from the touch of the incoming contactor to the next action, seen at the motor shaft; positive when the motor drives forward.',
  },
  plugVoltageDip: {
    unit: '1',
    definition:
      'Supply voltage less the lowest voltage at the motor terminals (behind line resistors, where there are any) from the touch of the incoming contactor to the next action, over the supply voltage; voltages as in the lowest terminal voltage.',
  },
  stopTimeFromParting: {
    unit: 's',
    definition: 'From the first parting of the outgoing contactor to the first passage through zero speed.',
  },
  stopTimeFromTouch: {
    unit: 's',
    definition: 'From the first touch of the incoming contactor that completes a circuit to zero speed.',
  },
  stopRevolutions: { unit: '1', definition: 'Shaft revolutions from the reversing command to zero speed.' },
  plugI2tA: {
    unit: 'A²·s',
    definition: 'Integral of the squared current of phase A from the reversing command to zero speed.',
  },
  plugI2tB: {
    unit: 'A²·s',
    definition: 'Integral of the squared current of phase B from the reversing command to zero speed.',
  },
  plugI2tC: {
    unit: 'A²·s',
    definition: 'Integral of the squared current of phase C from the reversing command to zero speed.',
  },
  plugStatorHeat: {
    unit: 'J',
    definition: 'Heat in the stator winding from the reversing command to zero speed.',
  },
  plugRotorHeat: {
    unit: 'J',
    definition: 'Heat in the rotor cages from the reversing command to zero speed.',
  },
  plugRotorHeatMultiple: {
    unit: '1',
    definition: 'That rotor heat over the kinetic energy of rotor and load at the reversing command.',
  },
  plugToStartHeatRatio: {
    unit: '1',
    definition: 'Rotor heat of the plug stop over the rotor heat of the start.',
  },
  plugLineResistorHeat: {
    unit: 'J',
    definition: 'Heat in the line resistors, all three together, from the reversing command to zero speed.',
  },
  plugRotorResistorHeat: {
    unit: 'J',
    definition:
      'Heat in the resistors at the slip rings, all three together, from the reversing command to zero speed.',
  },
  switchOpeningTime: {
    unit: 's',
    definition:
      'From the first touch of the incoming contactor that completes a circuit to the opening of the zero-speed switch; after it, and once the poles are open, the shaft coasts.',
  },
  switchOpeningSpeed: {
    unit: 'rad/s',
    definition: 'Shaft speed when the zero-speed switch opens, after its delay; positive is forward.',
  },
  creepSpeed: {
    unit: 'rad/s',
    definition:
      'Largest speed against the original direction of rotation after the zero-speed switch has opened.',
  },
  creepRevolutions: {
    unit: '1',
    definition:
      'Revolutions against the original direction from zero speed to the next action (or the end of the run).',
  },
  reversalTime: {
    unit: 's',
    definition:
      'From the first touch of the incoming contactor that completes a circuit to 95 % of the steady speed in the other direction.',
  },
  reversalRotorHeat: {
    unit: 'J',
    definition:
      'Heat in the rotor cages from the reversing command to 95 % of the steady speed in the other direction.',
  },
  reversalRotorHeatMultiple: {
    unit: '1',
    definition: 'That rotor heat over the kinetic energy of rotor and load at the reversing command.',
  },
  reversalToStartHeatRatio: {
    unit: '1',
    definition: 'Rotor heat of the reversal to 95 % of the steady speed over the rotor heat of the start.',
  },
  lowestTerminalVoltage: {
    unit: 'V',
    definition:
      'Least terminal voltage while all three terminals are connected, as the line-to-line r.m.s. value of a balanced system with the same space vector, over the whole run.',
  },
  ...poleDefinitions('run', 'contactor that was in when the reversal was commanded'),
  ...poleDefinitions('plug', 'contactor that plugged'),
  torsionalFrequency: {
    unit: 'Hz',
    definition:
      'Natural frequency of motor and load against each other on the elastic coupling, undamped and without free play.',
  },
  ledgerResidual: {
    unit: '1',
    definition: 'Error of the energy balance of the whole run over the energy put through.',
  },
};

type PoleGroup = 'run' | 'plug';
type PoleKey<G extends PoleGroup> =
  `${G}Pole${'A' | 'B' | 'C'}${'PartingCurrent' | 'ClearingTime' | 'ArcCharge'}`;

function poleDefinitions<G extends PoleGroup>(
  group: G,
  which: string,
): Record<PoleKey<G>, { unit: string; definition: string }> {
  const entries = (['A', 'B', 'C'] as const).flatMap((phase) => [
    [
      `${group}Pole${phase}PartingCurrent`,
      {
        unit: 'A',
        definition: `Magnitude of the current of pole ${phase} at contact parting, of the ${which}.`,
      },
    ],
    [
      `${group}Pole${phase}ClearingTime`,
      { unit: 's', definition: `From parting to extinction of pole ${phase}, of the ${which}.` },
    ],
    [
      `${group}Pole${phase}ArcCharge`,
      {
        unit: 'C',
        definition: `Integral of the magnitude of the current from parting to extinction of pole ${phase}, of the ${which}.`,
      },
    ],
  ]);
  return Object.fromEntries(entries) as Record<PoleKey<G>, { unit: string; definition: string }>;
}
