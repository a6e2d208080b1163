import type { Nameplate } from '../scenario/nameplate.ts';
import { assumed, derived, given, type Known } from './known.ts';
import { MOST_ROTOR_SHARE, rotorLoss } from './losses.ts';
import { nameplateError, short } from './nameplateError.ts';
import { efficiencyTolerance, powerFactorTolerance, TOLERANCE, widthOf } from './tolerances.ts';
import { DESIGN_D_SLIP, typicalEfficiency, typicalPowerFactor, typicalSlip } from './typicalMotor.ts';

/** Current, power factor, efficiency and slip at rated output. */
export interface Rating {
  /** Line current, A r.m.s. */
  readonly current: Known;
  readonly powerFactor: Known;
  readonly efficiency: Known;
  readonly slip: Known;
}

/** What a filled-in efficiency, power factor or slip may be off by: common practice, no source. */
const SPREAD = { efficiency: [0.97, 1.03], powerFactor: [0.94, 1.06], slip: [0.6, 1.5] } as const;
/** Power factor above which a current alone rather speaks for a better efficiency. */
const MOST_POWER_FACTOR = 0.93;
/** Efficiency above which no induction motor is. */
const MOST_EFFICIENCY = 0.985;
/** Share of the rotor in all losses that a filled-in slip is held to. */
const USUAL_ROTOR_SHARE = 0.3;

/**
 * Completes what rated output takes from the supply: P = √3·U·I·cos φ·η ties three of the four, the slip cannot cost more
 * than all losses.
 *
 * @param nameplate checked
 * @param designD rated slip of NEMA design D instead of the usual one
 * @throws ScenarioError when slip and efficiency contradict each other
 */
export function completeRating(nameplate: Nameplate, designD: boolean): Rating {
  const { power, lineVoltage, frequency, poles, speed } = nameplate;
  const synchronous = (4 * Math.PI * frequency) / poles;
  const slipRange = power < 1000 ? TOLERANCE.slipBelow1kW : TOLERANCE.slip;
  const givenSlip = speed === null ? null : 1 - speed / synchronous;
  const slipForLosses = givenSlip ?? (designD ? DESIGN_D_SLIP : null);
  const rating = electrical(nameplate, power / (Math.sqrt(3) * lineVoltage), slipForLosses);
  const losses = 1 / rating.efficiency.value - 1;
  if (givenSlip === null) return { ...rating, slip: filledSlip(power, losses, designD) };
  checkLosses(nameplate, rating.efficiency, losses, givenSlip, slipRange[0]);
  return { ...rating, slip: given(givenSlip, slipRange) };
}

/** @param active current that would carry the rated power alone, A */
function electrical(nameplate: Nameplate, active: number, slip: number | null): Omit<Rating, 'slip'> {
  const { power, poles } = nameplate;
  const current = nameplate.current === null ? null : given(nameplate.current, TOLERANCE.current);
  const powerFactor =
    nameplate.powerFactor === null
      ? null
      : given(nameplate.powerFactor, powerFactorTolerance(nameplate.powerFactor));
  const efficiency =
    nameplate.efficiency === null
      ? null
      : given(nameplate.efficiency, efficiencyTolerance(nameplate.efficiency, power));
  const usual = usualEfficiency(power, poles, slip);
  const fromPower = 'power = √3 × voltage × current × power factor × efficiency';
  if (current === null) {
    const eta = efficiency ?? usual;
    const cosine =
      powerFactor ?? assumed(typicalPowerFactor(power, poles), 'typical power factor', SPREAD.powerFactor);
    const range = scaled(TOLERANCE.current, Math.max(widthOf(cosine.range), widthOf(eta.range)));
    return {
      current: derived(active / (eta.value * cosine.value), fromPower, range),
      powerFactor: cosine,
      efficiency: eta,
    };
  }
  const product = active / current.value;
  if (powerFactor !== null) {
    if (efficiency !== null) return { current, powerFactor, efficiency };
    const value = product / powerFactor.value;
    return { current, powerFactor, efficiency: derived(value, fromPower, SPREAD.efficiency) };
  }
  if (efficiency !== null) {
    const value = product / efficiency.value;
    return { current, efficiency, powerFactor: derived(value, fromPower, SPREAD.powerFactor) };
  }
  if (product / usual.value <= MOST_POWER_FACTOR)
    return {
      current,
      efficiency: usual,
      powerFactor: derived(product / usual.value, fromPower, SPREAD.powerFactor),
    };
  const better = product / MOST_POWER_FACTOR;
  if (better > MOST_EFFICIENCY)
    throw nameplateError(
      'current',
      `${short(current.value)} A`,
      `makes efficiency × power factor ${short(product)}, more than any induction motor has`,
      `at least ${short(active / (MOST_EFFICIENCY * MOST_POWER_FACTOR))} A`,
    );
  return {
    current,
    efficiency: derived(
      better,
      `the current allows no lower one at a power factor of ${MOST_POWER_FACTOR}`,
      SPREAD.efficiency,
    ),
    powerFactor: assumed(MOST_POWER_FACTOR, 'highest usual power factor', SPREAD.powerFactor),
  };
}

/** Typical efficiency, lowered where the slip costs more than the usual share of its losses. */
function usualEfficiency(power: number, poles: number, slip: number | null): Known {
  const typical = typicalEfficiency(power, poles);
  const allowed = slip === null ? 1 : 1 / (1 + rotorLoss(slip) / MOST_ROTOR_SHARE);
  return allowed < typical
    ? assumed(allowed, `the slip costs ${short(100 * MOST_ROTOR_SHARE)} % of the losses`, SPREAD.efficiency)
    : assumed(typical, 'IE2 efficiency of this power and number of poles', SPREAD.efficiency);
}

function filledSlip(power: number, losses: number, designD: boolean): Known {
  const shareOfLosses = (share: number) => (share * losses) / (1 + share * losses);
  if (designD) {
    const slip = Math.min(DESIGN_D_SLIP, shareOfLosses(MOST_ROTOR_SHARE));
    return slip === DESIGN_D_SLIP
      ? {
          value: slip,
          origin: 'standard',
          source: 'NEMA MG 10, design D: 5 to 8 %',
          kind: 'value',
          usual: null,
          range: [0.77, 1.23],
        }
      : assumed(slip, 'design D, held to what the efficiency leaves', SPREAD.slip);
  }
  const usual = typicalSlip(power);
  const left = shareOfLosses(USUAL_ROTOR_SHARE);
  return usual <= left
    ? assumed(usual, 'typical slip of this power', SPREAD.slip)
    : assumed(left, 'typical share of the rotor in the losses', SPREAD.slip);
}

/**
 * Beside the rotor there are a stator winding, iron and bearings: at the limits of the tolerances the rotor may not have more
 * than 95 % of all losses.
 */
const MOST_SHARE_AT_LIMITS = 0.95;

function checkLosses(
  nameplate: Nameplate,
  efficiency: Known,
  losses: number,
  slip: number,
  leastSlip: number,
): void {
  const mostLosses = 1 / (efficiency.value * efficiency.range[0]) - 1;
  const leastRotor = rotorLoss(slip * leastSlip);
  if (leastRotor <= MOST_SHARE_AT_LIMITS * mostLosses) return;
  const item = nameplate.efficiency === null ? 'speed' : 'efficiency';
  const found =
    item === 'speed' ? `${short((nameplate.speed! * 30) / Math.PI)} rpm` : short(efficiency.value);
  throw nameplateError(
    item,
    found,
    `does not fit: the slip of ${short(100 * slip)} % alone costs ${short(100 * rotorLoss(slip))} % of the rated power, ` +
      `and all losses are ${short(100 * losses)} %`,
    `an efficiency below ${short(1 / (1 + rotorLoss(slip)))} or a higher speed`,
  );
}

function scaled(range: readonly [number, number], atLeast: number): readonly [number, number] {
  return [Math.min(range[0], 1 - atLeast), Math.max(range[1], 1 + atLeast)];
}
