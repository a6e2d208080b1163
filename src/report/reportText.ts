/** How the figures are computed, for the note's method section. */
export const METHOD: readonly string[] = [
  'The machine is the equivalent circuit per phase with one or two rotor cages, written in flux linkages and space vectors (amplitude invariant, isolated star point). Air-gap torque is (3/2)·p·Im(ψs*·is).',
  'A contactor does not switch off at an instant: its contacts part, every pole arcs on and clears at its own next current zero. The equations change with the set of poles that conduct: three, two or none; fluxes and speed run through every change without a jump.',
  'After the last pole has cleared, the trapped rotor flux decays and turns with the shaft. The reversing contactor closes on this residual voltage with two phases exchanged.',
  'Dry friction opposes motion and holds the shaft at rest. Position is integrated with speed.',
  'Each stretch between two switchings is integrated by extrapolation with error control, in the reference frame that suits it. Switching instants, current zeros and extrema are located on the interpolant of the solution, heats and charges integrated on it; nothing is read off a plot grid.',
  'Multiples of rated use current and torque at rated output, never a base value. A crest is compared with the crest at rated output.',
];

/** What the model leaves out, and which way it errs. */
export const LEFT_OUT: readonly string[] = [
  'Magnetic saturation: the circuit is linear. Saturated leakage lets more current flow, so peaks of current and torque are understated, commonly by tens of per cent.',
  'Skin effect in the rotor bars beyond what two cages represent.',
  'Space-harmonic torques, notably of the fifth harmonic near slip 1.2, inside the plugging range.',
  'Arc voltage and re-ignition; contact bounce; welding.',
  'Iron loss, and change of resistance with temperature.',
  'Shaft twist: the rotor and the load turn as one mass, so the torque in the coupling is not the air-gap torque.',
  'Slot-passing effects, unbalanced windings, unbalanced or distorted supply.',
  'Current-transformer saturation and the operation of protective devices.',
  'Power-factor capacitors at the motor terminals: they sustain the residual voltage and make plugging far worse. These figures do not hold with them, nor for motors fed by an electronic starter or converter.',
];

/** Where the equations and methods come from. */
export const SOURCES: readonly string[] = [
  'P. C. Krause, O. Wasynczuk, S. D. Sudhoff, Analysis of Electric Machinery and Drive Systems, IEEE Press/Wiley: equations of the symmetrical induction machine and reference frames.',
  'E. Hairer, S. P. Nørsett, G. Wanner, Solving Ordinary Differential Equations I, Springer, section II.9: extrapolation method with dense output.',
  'M. Okabe, K. Ito, Color Universal Design, 2008: palette of the figures.',
];
