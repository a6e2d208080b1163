/** The scenario that the page shows: the four needed sections, and a zero-speed switch because it plugs. */
export const SMALLEST_SCENARIO = `title: Bobbin winder
supply:
  lineVoltage: 400 V
  frequency: 50 Hz
machine:
  nameplate: { power: 5.5 kW, speed: 1450 rpm }
load:
  inertia: 0.09 kg m^2
  torque: { kind: friction, torque: 11 N m }
starter:
  zeroSpeedSwitch: { dropOutSpeed: 50 rpm, pickUpSpeed: 100 rpm }
actions:
  - { at: 0 s, do: start forward }
  - { at: 1.5 s, do: plug }
`;
