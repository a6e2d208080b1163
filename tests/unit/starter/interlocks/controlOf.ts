import type { ControlData } from '../../../../src/scenario/scenario.ts';

/** A wired control circuit with mechanical interlock and overload relay, plain but for what is stated. */
export function controlOf(stated: Partial<ControlData> & Pick<ControlData, 'scheme'>): ControlData {
  return {
    memoryRelay: false,
    readyRelay: false,
    emergencyStop: { category: 0 },
    changeoverTimer: 0,
    mechanicalInterlock: true,
    relayTime: 0.01,
    scanTime: 0,
    coilVoltage: null,
    overload: { setting: 10, tripClass: '10', start: 'cold', memory: 'kept' },
    ...stated,
  };
}
