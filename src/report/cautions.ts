/** Short, and shown wherever the figures are acted on. */
export const CAUTIONS: readonly string[] = [
  'Plugging stresses people, shafts and contactors.',
  'A zero-speed switch is not a safety stop.',
  'Local codes and a licensed engineer decide.',
];
