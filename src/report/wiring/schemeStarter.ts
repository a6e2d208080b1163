import { brakes } from '../../scenario/controlWords.ts';
import type { ControlData, SchemeName, StarterData } from '../../scenario/scenario.ts';

/**
 * A starter for the drawing of a scheme that belongs to no scenario: with memory relays where the scheme can have them, emergency
 * stop of category 0, mechanical interlock and overload relay. Its times and currents do not show in the drawing.
 */
export function schemeStarter(scheme: SchemeName): StarterData {
  const control: ControlData = {
    scheme,
    memoryRelay: brakes(scheme),
    readyRelay: false,
    emergencyStop: { category: 0 },
    changeoverTimer: 0,
    mechanicalInterlock: true,
    relayTime: 0.01,
    scanTime: 0,
    coilVoltage: null,
    overload: { setting: 1, tripClass: '10', start: 'cold', memory: 'kept' },
  };
  const usesSwitch = brakes(scheme) || scheme === 'antiPlugging';
  return {
    closingTime: 0.02,
    openingTime: 0.01,
    closingScatter: [0, 0, 0],
    openingScatter: [0, 0, 0],
    changeoverDelay: 0,
    changeoverGivenAs: 'default',
    poles: 'arcing',
    minimumArcingTime: 0,
    exchangedPhases: 'BC',
    zeroSpeedSwitch: usesSwitch ? { pickUpSpeed: 10, dropOutSpeed: 5, delay: 0 } : null,
    control,
  };
}
