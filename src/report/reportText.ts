import type { Scenario } from '../scenario/scenario.ts';

/** How the figures are computed, for the note's method section. */
export function methodOf({ machine, load, starter, supply }: Scenario): string[] {
  const { leakageSaturation, mainSaturation, core, rotorResistors } = machine;
  const text: (string | false)[] = [
    'The machine is the equivalent circuit per phase with one or two rotor cages, written in flux linkages and space vectors (amplitude invariant, isolated star point). Air-gap torque is (3/2)·p·Im(ψs*·is).',
    mainSaturation !== undefined &&
      'The main flux saturates: its magnetising curve holds in every state, along the direction of the flux.',
    leakageSaturation !== undefined &&
      'The leakage paths saturate with their own current: each follows from a stored energy, so that the energy ledger closes with them.',
    core !== undefined &&
      'Iron loss is that of a short-circuited winding at rest, coupled to the main flux as a cage that does not turn; the air-gap torque then is (3/2)·p times Im(ψm*·is) plus Im(ψm*·i) of that winding.',
    'A contactor does not switch off at an instant: its contacts part, every pole arcs on and clears at its own next current zero. The equations change with the set of poles that conduct: three, two or none; fluxes and speed run through every change without a jump.',
    (starter.faults ?? []).length > 0 &&
      'Lost phases, welded and dead poles act through the same set of conducting poles.',
    'After the last pole has cleared, the trapped rotor flux decays and turns with the shaft. The reversing contactor closes on this residual voltage with two phases exchanged.',
    starter.plugConnection !== undefined &&
      'The windings are connected in star while no pole conducts; every winding keeps its flux, so that the space vectors change by √3 and turn by 30°.',
    starter.lineResistors !== undefined &&
      'Line resistors are put into the lines and bypassed at an instant, in all three phases alike.',
    rotorResistors !== undefined &&
      'Resistors at the slip rings stand in the rotor circuit, referred to the stator, and change at an instant.',
    supply.cable !== undefined && 'The cable is a resistance and an inductance in series with the source.',
    'Dry friction opposes motion and holds the shaft at rest. Position is integrated with speed.',
    load.gear !== undefined &&
      'The efficiency of the gear acts on load and inertia torque alike, according to the direction of power in its mesh; a change of that direction is located as an event.',
    load.coupling !== undefined &&
      'Motor and load are two masses joined by a spring with the stated damping and free play. The coupling torque is counted at the motor shaft.',
    'Each stretch between two switchings is integrated by extrapolation with error control, in the reference frame that suits it. Switching instants, current zeros and extrema are located on the interpolant of the solution, heats and charges integrated on it; nothing is read off a plot grid.',
    'Multiples of rated use current and torque at rated output, never a base value. A crest is compared with the crest at rated output.',
  ];
  return text.filter((sentence) => sentence !== false);
}

/** What the model of this run leaves out, and which way it errs. */
export function leftOut({ machine, load, starter }: Scenario): string[] {
  const text: (string | false)[] = [
    saturationLeftOut(machine),
    'Skin effect in the rotor bars beyond what two cages represent.',
    'Space-harmonic torques, notably of the fifth harmonic near slip 1.2, inside the plugging range.',
    'Arc voltage and re-ignition; contact bounce; contacts that weld in the run itself.',
    machine.core === undefined && 'Iron loss.',
    'Change of resistance with temperature during the run.',
    load.coupling === undefined &&
      'Shaft twist: the rotor and the load turn as one mass, so the torque in the coupling is not the air-gap torque.',
    'Slot-passing effects, unbalanced windings, unbalanced or distorted supply.',
    starter.control?.overload == null
      ? 'Current-transformer saturation and the operation of protective devices.'
      : 'Current-transformer saturation and the operation of protective devices other than the overload relay.',
    'Power-factor capacitors at the motor terminals: they sustain the residual voltage and make plugging far worse. These figures do not hold with them, nor for motors fed by an electronic starter or converter.',
  ];
  return text.filter((sentence) => sentence !== false);
}

function saturationLeftOut({ leakageSaturation, mainSaturation }: Scenario['machine']): string | false {
  const peaks =
    'Saturated leakage lets more current flow, so peaks of current and torque are understated, commonly by tens of per cent.';
  if (leakageSaturation === undefined)
    return mainSaturation === undefined
      ? `Magnetic saturation: the circuit is linear. ${peaks}`
      : `Saturation of the leakage paths: they are linear. ${peaks}`;
  return (
    mainSaturation === undefined && 'Saturation of the main flux: the magnetising inductance is constant.'
  );
}

/** Where the equations and methods come from. */
export const SOURCES: readonly string[] = [
  'P. C. Krause, O. Wasynczuk, S. D. Sudhoff, Analysis of Electric Machinery and Drive Systems, IEEE Press/Wiley: equations of the symmetrical induction machine and reference frames.',
  'E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I, Springer, section II.9: extrapolation method with dense output.',
  'M. Okabe, K. Ito, Color Universal Design, 2008: palette of the figures.',
];
