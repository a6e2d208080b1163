import type { z } from 'zod';
import { hypotenuse } from '../numeric/hypotenuse.ts';
import { squared } from '../numeric/raised.ts';
import {
  assumedCableReactance,
  assumedCableReactanceFrequency,
  assumedCableTemperature,
  assumedNetworkXOverR,
  assumedXOverR,
} from './defaults.ts';
import type { cableInput, transformerInput } from './feederInput.ts';
import { derivedValue, type Note } from './origin.ts';
import type { CableData } from './scenario.ts';
import { stated } from './stated.ts';

/** Resistivity at 20 °C, Ω·m. Source: IEC 60909-0 (1/54 and 1/34 Ω·mm²/m), from memory; IEC 60228's maxima lie within 4 %. */
const resistivity = { copper: 1e-6 / 54, aluminium: 1e-6 / 34 } as const;

/** Rise of the resistance per kelvin above 20 °C, both metals. Source: IEC 60909-0, from memory. */
const temperatureCoefficient = 0.004;

/** A series impedance at the supply frequency, Ω. */
export interface Impedance {
  readonly resistance: number;
  readonly reactance: number;
}

/**
 * Splits the magnitude of an impedance by X/R.
 *
 * @param magnitude Ω
 * @param xOverR reactance over resistance
 */
export function splitImpedance(magnitude: number, xOverR: number): Impedance {
  const resistance = magnitude / hypotenuse(1, xOverR);
  return { resistance, reactance: resistance * xOverR };
}

/**
 * Series impedance of a transformer and of the network above it, seen at its secondary: |Z| = z·V²/S, R = P_cu·V²/S².
 *
 * @param transformer as stated, in SI
 * @param lineVoltage V, secondary
 * @param note takes down what was not given
 */
export function transformerImpedance(
  transformer: z.output<typeof transformerInput>,
  lineVoltage: number,
  note: Note,
): Impedance {
  const { rating, impedance, copperLoss, networkShortCircuitPower } = transformer;
  const base = squared(lineVoltage) / rating;
  let own: Impedance;
  if (copperLoss !== undefined) {
    const perUnit = copperLoss / rating;
    // The rule on copperLoss keeps the root real.
    own = { resistance: perUnit * base, reactance: Math.sqrt(squared(impedance) - squared(perUnit)) * base };
  } else {
    if (transformer.xOverR === undefined) note('xOverR', String(assumedXOverR), 'assumed');
    own = splitImpedance(impedance * base, transformer.xOverR ?? assumedXOverR);
  }
  note('resistance', derivedValue(own.resistance, 'ohm'), 'derived');
  note('reactance', derivedValue(own.reactance, 'ohm'), 'derived');
  if (networkShortCircuitPower === undefined) {
    note('networkShortCircuitPower', 'infinite', 'assumed');
    return own;
  }
  if (transformer.networkXOverR === undefined)
    note('networkXOverR', String(assumedNetworkXOverR), 'assumed', 'IEC 60909-0, from memory');
  const network = splitImpedance(
    squared(lineVoltage) / networkShortCircuitPower,
    transformer.networkXOverR ?? assumedNetworkXOverR,
  );
  return {
    resistance: own.resistance + network.resistance,
    reactance: own.reactance + network.reactance,
  };
}

/**
 * Series impedance of a cable: R = ρ·l/A·[1 + α·(θ − 20 °C)], or values as stated.
 *
 * @param cable as stated, in SI
 * @param frequency Hz, of the supply
 * @param note takes down what was not given
 */
export function resolveCable(cable: z.output<typeof cableInput>, frequency: number, note: Note): CableData {
  const length = cable.length ?? 0;
  const whole = ({ kind, value }: { readonly kind: 'perLength' | 'whole'; readonly value: number }) =>
    kind === 'perLength' ? value * length : value;
  const derived = (key: keyof CableData, value: number, unit: string, scale = 1) =>
    note(`whole.${key}`, derivedValue(value * scale, unit), 'derived');
  let resistance: number;
  if (cable.resistance !== undefined) {
    resistance = whole(cable.resistance);
    if (cable.resistance.kind === 'perLength') derived('resistance', resistance, 'ohm');
  } else {
    if (cable.conductor === undefined) note('conductor', 'copper', 'assumed');
    if (cable.temperature === undefined) note('temperature', `${assumedCableTemperature} degC`, 'assumed');
    const rise = (cable.temperature ?? assumedCableTemperature) - 20;
    const cold =
      (resistivity[cable.conductor ?? 'copper'] * length) / stated(cable.crossSection, 'crossSection');
    resistance = cold * (1 + temperatureCoefficient * rise);
    derived('resistance', resistance, 'ohm');
  }
  if (cable.inductance !== undefined) return { resistance, inductance: cable.inductance };
  if (cable.reactance === undefined)
    note('reactance', '0.08 ohm/km at 50 Hz', 'assumed', 'common practice, no source');
  const inductance =
    cable.reactance === undefined
      ? (assumedCableReactance * length) / (2 * Math.PI * assumedCableReactanceFrequency)
      : whole(cable.reactance) / (2 * Math.PI * frequency);
  derived('inductance', inductance, 'mH', 1e3);
  return { resistance, inductance };
}
