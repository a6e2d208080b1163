import { raised, squared } from '../numeric/raised.ts';
import { assumedFrictionShare, coreXOverR } from '../scenario/defaults.ts';
import type { CircuitPart } from '../scenario/nameplate.ts';
import type { MachineData, RatedData, Supply } from '../scenario/scenario.ts';
import type { CompleteNameplate } from './completeNameplate.ts';
import { AT, type Candidate, type Unknowns, unknownOfRemaining, unknownsOf } from './parameters.ts';

/** Ω that are 1 in multiples of rated power. */
const baseImpedance = ({ lineVoltage, power }: CompleteNameplate) => squared(lineVoltage) / power;

/** The circuit in SI, equivalent star. */
export function circuitPartOf(candidate: Candidate, complete: CompleteNameplate): CircuitPart {
  const { circuit, mechanicalLoss } = candidate;
  const { power, lineVoltage, frequency, synchronousSpeed } = complete;
  const Z = baseImpedance(complete);
  const henry = Z / (2 * Math.PI * frequency);
  const speed = (1 - complete.slip.value) * synchronousSpeed;
  const loss = mechanicalLoss * power;
  const base = {
    Rs: circuit.Rs * Z,
    Lls: circuit.Xls * henry,
    Lm: circuit.Xm * henry,
    cages: circuit.cages.map(({ Rr, Xlr }) => ({ Rr: Rr * Z, Llr: Xlr * henry })),
    inertia: complete.inertia.value,
    rated: ratedOf(complete),
    mechanicalLoss: {
      friction: (assumedFrictionShare * loss) / speed,
      windage: ((1 - assumedFrictionShare) * loss) / raised(speed, 3),
    },
  };
  const core = circuit.Rc === null ? {} : { core: { R: circuit.Rc * Z, L: coreXOverR * circuit.Rc * henry } };
  if (circuit.saturation === null) return { ...base, ...core };
  const crest = (Math.SQRT2 * power) / (Math.sqrt(3) * lineVoltage);
  const { current, remaining } = circuit.saturation;
  return {
    ...base,
    ...core,
    leakageSaturation: {
      stator: { current: current * crest, remaining },
      cages: circuit.cages.map((_, j) => (j === 0 ? { current: current * crest, remaining } : null)),
    },
  };
}

/** What of the rating is stated; the rest is the circuit's at rated power, which meets what was filled in. */
function ratedOf({ power, current, slip, synchronousSpeed }: CompleteNameplate): RatedData {
  const speed = slip.origin === 'given' ? (1 - slip.value) * synchronousSpeed : null;
  return {
    power,
    speed,
    torque: speed === null ? null : power / speed,
    current: current.origin === 'given' ? current.value : null,
  };
}

/** Unknowns that belong to a circuit this room made: the inverse of `circuitPartOf`. */
export function unknownsOfPart(part: CircuitPart, complete: CompleteNameplate): Unknowns {
  const Z = baseImpedance(complete);
  const henry = Z / (2 * Math.PI * complete.frequency);
  const [outer, inner] = part.cages.map(({ Rr, Llr }) => ({ Rr: Rr / Z, Xlr: Llr / henry }));
  const { friction, windage } = part.mechanicalLoss!;
  const speed = (1 - complete.slip.value) * complete.synchronousSpeed;
  const x = unknownsOf({
    Rs: part.Rs / Z,
    Xls: part.Lls / henry,
    Xm: part.Lm / henry,
    outer: outer!,
    inner: inner!,
    Rc: part.core!.R / Z,
    mechanicalLoss: (friction * speed + windage * raised(speed, 3)) / complete.power,
  });
  const remaining = part.leakageSaturation?.stator?.remaining;
  return remaining === undefined ? x : [...x.slice(0, AT.z), unknownOfRemaining(remaining)];
}

/** The machine on its rated supply, for the machine room's equations. */
export function onRatedSupply(
  part: CircuitPart,
  {
    connection,
    poles,
    lineVoltage,
    frequency,
  }: Pick<CompleteNameplate, 'connection' | 'poles' | 'lineVoltage' | 'frequency'>,
): { readonly machine: MachineData; readonly supply: Supply } {
  return {
    machine: { connection, polePairs: poles / 2, ...part },
    supply: { lineVoltage, frequency, angle: 0, sourceResistance: 0, sourceInductance: 0 },
  };
}
