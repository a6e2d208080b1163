import { CLOSE_MARGIN } from '../../assess/criterion.ts';

/** How a judgement is come by. */
export const JUDGEMENT_METHOD: readonly string[] = [
  'The start and the stop are simulated pole by pole from the motor’s equivalent circuit; all figures are read from that run. The verdict joins the criteria: one that fails decides; else one that is needed and not judged; else plugging is suitable by them.',
  `A value within ${Math.round(100 * CLOSE_MARGIN)} % of its limit is called close to it (common practice, no source).`,
  'Heating: winding, cage, and core with frame are bodies that store heat and exchange it; their parameters stand in the section on heating with their origin. The temperatures are those of the periodic steady state, solved as such and not run up to. While the motor speeds up or slows down its own fan is not counted.',
  'Wear: current and recovery voltage at the parting of the contacts are averaged over opening instants spread evenly over the supply cycle; lives of different kinds of breaking add up by linear damage (Miner’s rule).',
  'The other ways to stop are simulated with the same machine, load and supply. Each has its own sequence of contactors; what the scenario does not set for them is chosen, and said so.',
];

/** What a judgement does not contain. */
export const JUDGEMENT_LEFT_OUT: readonly string[] = [
  'Fatigue of shaft, key, coupling and cage bars under many stops; bearing and winding-head forces.',
  'Hot spots: each body of the thermal model has one temperature. Resistances do not change with it during a run.',
  'Short circuits downstream, selectivity and coordination of the protective devices.',
  'Scatter of contact bounce, contact welding, dust, vibration and other surroundings of the contactors.',
  'Whatever the load does to people, goods and structure beyond the limits that the scenario states.',
];
