/** A number that comes from a standard or from the practice of the trade, with its source and how certain it is. */
export interface SourcedValue {
  /** In `unit`. */
  readonly value: number;
  /** Symbol of the unit, '1' for a ratio. */
  readonly unit: string;
  /** Standard or practice of the trade it comes from, and how certain it is. */
  readonly source: string;
}

const from = (value: number, unit: string, source: string): SourcedValue => ({ value, unit, source });

/** Every limit and constant of the judgement that comes from a standard or from common practice. One table. */
export const STANDARD_LIMITS = {
  // Insulation: rise by resistance of air-cooled windings at 40 °C and up to 1000 m
  rise130: from(
    80,
    'K',
    "IEC 60034-1, thermal class 130 (B), by resistance, as cited in a manufacturer's manual",
  ),
  rise155: from(
    105,
    'K',
    "IEC 60034-1, thermal class 155 (F), by resistance, as cited in a manufacturer's manual",
  ),
  rise180: from(
    125,
    'K',
    "IEC 60034-1, thermal class 180 (H), by resistance, as cited in a manufacturer's manual",
  ),
  referenceAmbient: from(
    40,
    '°C',
    "IEC 60034-1: rises hold for cooling air of 40 °C, as cited in a manufacturer's manual",
  ),
  referenceAltitude: from(1000, 'm', 'IEC 60034-1: rises hold up to 1000 m (from memory)'),
  altitudeStep: from(
    0.01,
    '1/100 m',
    'IEC 60034-1: 1 % of the limit of rise per 100 m above 1000 m (from memory)',
  ),
  coldestAmbient: from(0, '°C', 'IEC 60034-1: below it the limits of rise are by agreement (from memory)'),
  hottestAmbient: from(60, '°C', 'IEC 60034-1: above it the limits of rise are by agreement (from memory)'),
  highestAltitude: from(4000, 'm', 'IEC 60034-1: above it the limits of rise are by agreement (from memory)'),
  stallTime: from(
    12,
    's',
    'NEMA MG 1-12.49: at least 12 s with locked rotor from normal operating temperature, up to 500 hp and 1 kV (from memory)',
  ),
  // Contactors
  makingAc3: from(10, '× Ie', 'IEC 60947-4-1, rated making capacity AC-3, as cited in data sheets'),
  makingAc4: from(12, '× Ie', 'IEC 60947-4-1, rated making capacity AC-4 (from memory)'),
  testPowerFactor: from(
    0.45,
    '1',
    'IEC 60947-4-1, making and breaking tests up to 100 A, as cited in data sheets',
  ),
  testPowerFactorLarge: from(
    0.35,
    '1',
    'IEC 60947-4-1, making and breaking tests above 100 A, as cited in data sheets',
  ),
  testPowerFactorStep: from(
    100,
    'A',
    'IEC 60947-4-1, rated current at which the power factor of the tests changes, as cited in data sheets',
  ),
  breakingAc3: from(8, '× Ie', 'IEC 60947-4-1, rated breaking capacity AC-3, as cited in data sheets'),
  breakingAc4: from(10, '× Ie', 'IEC 60947-4-1, rated breaking capacity AC-4 (from memory)'),
  durabilityMakeMultiple: from(
    6,
    '× Ie',
    'IEC 60947-4-1, electrical durability test, making current AC-3 and AC-4 (from memory)',
  ),
  durabilityBreakAc3: from(
    1,
    '× Ie',
    'IEC 60947-4-1, electrical durability test AC-3, breaking current (from memory)',
  ),
  durabilityVoltageAc3: from(
    0.17,
    '× Ue',
    'IEC 60947-4-1, electrical durability test AC-3, voltage after breaking (from memory)',
  ),
  durabilityBreakAc4: from(
    6,
    '× Ie',
    "IEC 60947-4-1, electrical durability test AC-4, breaking current, as cited in a manufacturer's catalogue",
  ),
  durabilityVoltageAc4: from(
    1,
    '× Ue',
    'IEC 60947-4-1, electrical durability test AC-4, voltage after breaking (from memory)',
  ),
  genericLifeAc3: from(
    1.2e6,
    'operations',
    "typical sintered contacts at the rated current in AC-3, mixed-duty endurance table of a manufacturer's catalogue",
  ),
  genericLifeAc4: from(
    3e4,
    'operations',
    "typical sintered contacts at six times the rated current in AC-4, mixed-duty endurance table of a manufacturer's catalogue",
  ),
  lifeScatterStated: from(
    2,
    '×',
    'scatter of the life of contacts about a stated one: common practice, no source',
  ),
  lifeScatterGeneric: from(
    4,
    '×',
    'scatter of the life of contacts about a life that is not that of the device: common practice, no source',
  ),
  plugDutyPerMinute: from(
    5,
    '1/min',
    'plugging and jogging duty begins above 5 openings or closings per minute (North American practice, from memory)',
  ),
  plugDutyPerTenMinutes: from(
    10,
    '1/10 min',
    'plugging and jogging duty begins above 10 openings or closings in 10 minutes (North American practice, from memory)',
  ),
  // The stop itself
  stopsEndedOtherwise: from(
    0,
    '1',
    'IEC 60204-1, reverse-current braking: where reversal can cause a hazard, or damage to machine or work, the machine must not start in the opposite direction, and a device that works on time alone is not permitted for that (from memory)',
  ),
  leastArcMargin: from(
    0,
    's',
    'physics: below zero a contactor closes onto the arc of the other one, a line-to-line short circuit',
  ),
  longestArc: from(
    0.5,
    '× period',
    'an arc ends at a current zero, at most half a period after the contacts part (from memory)',
  ),
  // Shaft
  torsionalStep: from(
    2,
    '× rigid',
    'physics: a step of torque swings up to twice its share in an undamped elastic shaft; torque that alternates near resonance swings further',
  ),
  gravity: from(9.80665, 'm/s²', 'standard acceleration of free fall, exact'),
} as const satisfies Record<string, SourcedValue>;
