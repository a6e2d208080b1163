import type { CircuitPart } from '../scenario/nameplate.ts';
import type { Origin } from '../scenario/origin.ts';

/**
 * Takes down every value of an estimated circuit, by its path within the machine section; reactances at rated frequency.
 *
 * @param source in words: "fitted to the nameplate"
 */
export function circuitNotes(part: CircuitPart, frequency: number, source: string): readonly Origin[] {
  const omega = 2 * Math.PI * frequency;
  const { core, mechanicalLoss } = part;
  const saturation = part.leakageSaturation?.stator ?? null;
  const entries: readonly (readonly [string, number, string])[] = [
    ['statorResistance', part.Rs, 'ohm'],
    ['statorLeakage', omega * part.Lls, 'ohm'],
    ['magnetising', omega * part.Lm, 'ohm'],
    ...part.cages.flatMap(({ Rr, Llr }, index) => [
      [`cages.${index}.resistance`, Rr, 'ohm'] as const,
      [`cages.${index}.leakage`, omega * Llr, 'ohm'] as const,
    ]),
    ...(core === undefined ? [] : [['core.resistance', core.R, 'ohm'] as const]),
    ...(mechanicalLoss === undefined
      ? []
      : ([
          ['mechanicalLoss.friction', mechanicalLoss.friction, 'N m'],
          ['mechanicalLoss.windage', mechanicalLoss.windage, 'N m s^2'],
        ] as const)),
    ...(saturation === null
      ? []
      : ([
          ['leakageSaturation.stator.current', saturation.current, 'A crest'],
          ['leakageSaturation.stator.remaining', saturation.remaining, ''],
        ] as const)),
  ];
  return entries.map(([path, value, unit]) => ({
    path: `equivalentStar.${path}`,
    value: `${Number(value.toPrecision(4))} ${unit}`.trim(),
    origin: 'estimated',
    source,
  }));
}
