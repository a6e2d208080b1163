import { bounds } from './bounds.ts';
import { group, quantity } from './field.ts';
import { limitNumber, limitQuantity, limitRatio } from './limitInput.ts';

const torque = (about: string, example: string) =>
  limitQuantity(bounds.ratedTorque, { about, example }).optional();

/** The limits as a person writes them. */
export const limitsInput = group('Limits of plant and load; what is left out is not judged', {
  instantaneousTrip: limitQuantity(bounds.faultCurrent, {
    about: 'Setting of an instantaneous trip, r.m.s., which must not trip',
    example: '180 A',
  }).optional(),
  voltageDip: limitRatio(
    { min: 0, aboveMin: true, max: 1 },
    { about: "Largest voltage dip at the motor terminals, of the supply's voltage", example: '12 %' },
  ).optional(),
  couplingTorque: torque('Largest torque of the coupling, at the motor shaft', '280 N m'),
  gearboxTorque: torque('Largest torque of the gearbox, at the motor shaft', '240 N m'),
  keyTorque: torque('Largest torque of the key, at the motor shaft', '310 N m'),
  brakeTorque: torque('Largest torque the holding brake stands, at the motor shaft', '150 N m'),
  deceleration: limitQuantity(bounds.deceleration, {
    about: "Largest deceleration of the load at decelerationRadius of the load's shaft",
    example: '0.3 g0',
  }).optional(),
  decelerationRadius: quantity(bounds.radius, {
    about:
      "Radius at the load's shaft at which deceleration, tippingRatio and slidingFriction hold: of a drum or a wheel",
    example: '160 mm',
  }).optional(),
  tippingRatio: limitNumber(
    { min: 0.01, max: 100 },
    {
      about:
        'Height of the centre of gravity of what stands on the load over half its base in the direction of motion; it tips beyond standard gravity over this',
      example: '2.4',
    },
  ).optional(),
  slidingFriction: limitNumber(
    { min: 0.001, max: 10 },
    {
      about:
        'Coefficient of friction under what stands on the load; it slides beyond standard gravity times this',
      example: '0.35',
    },
  ).optional(),
  reverseCreep: limitQuantity(bounds.creep, {
    about: 'Largest reverse rotation of the motor shaft after the stop',
    example: '90 deg',
  }).optional(),
  deadTimeMargin: limitQuantity(bounds.changeover, {
    about: "Least time between the end of the last arc and the reversing contactor's touch",
    example: '5 ms',
  }).optional(),
  stopTime: limitQuantity(bounds.stopTime, {
    about: 'Longest time from the command to rest',
    example: '1.2 s',
  }).optional(),
  stopAngle: limitQuantity(bounds.stopAngle, {
    about: 'Most revolutions of the motor shaft from the command to rest',
    example: '15 rev',
  }).optional(),
  contactLife: limitNumber(
    { min: 1, max: 1_000_000_000 },
    { about: 'Least number of operations the contacts must last', example: '150000' },
  ).optional(),
});
