import type { ControlFinding } from '../measure/controlFindings.ts';
import type { RunResult } from '../measure/result.ts';
import { formatInstant, formatQuantity, type UnitSystem } from './formatQuantity.ts';

/** What the control did that a reader must know first, as sentences; '' when there is nothing. */
export function controlSentences(result: RunResult, units: UnitSystem): string {
  return result.controlFindings.map((finding) => sentence(finding, units)).join(' ');
}

function sentence(finding: ControlFinding, units: UnitSystem): string {
  const speed = (value: number) => formatQuantity(Math.abs(value), 'rad/s', { system: units });
  switch (finding.kind) {
    case 'runsUpInReverse':
      return (
        'The zero-speed switch does not end the braking: the machine is plugged through standstill and runs up in the other ' +
        `direction, to ${speed(finding.speed)}; the ${finding.contactor} contactor is still in.`
      );
    case 'doesNotStop':
      return (
        `The machine does not stop: the ${finding.contactor} contactor stays in when its coil drops at ${formatInstant(finding.t)}, and ` +
        `at the end the shaft turns at ${speed(finding.speed)}. Nothing in the control circuit can end that; only the supply's isolating device can.`
      );
    case 'stillRuns':
      return `The machine has not stopped: at the end the ${finding.contactor} contactor is in and the shaft turns at ${speed(finding.speed)}.`;
    case 'startsByItself': {
      const hands = finding.held ? 'a start button is held down all the while' : 'no start button is pressed';
      return `The ${finding.contactor} coil is energised by itself at ${formatInstant(finding.t)} (${finding.cause}): ${hands}.`;
    }
    case 'notBraked': {
      const why = finding.shown
        ? 'the braking contactor is not energised'
        : 'the zero-speed switch showed no rotation to the circuit';
      return `The stop at ${formatInstant(finding.t)} does not brake: the machine coasts from ${speed(finding.speed)} because ${why}.`;
    }
    case 'limitEndsBraking':
      return finding.ranUp
        ? `The time limit of the emergency stop ends the braking only at ${formatInstant(finding.t)}: by then the machine has run up in the other direction to ${speed(finding.speed)}.`
        : `The time limit of the emergency stop ends the braking at ${formatInstant(finding.t)}, at ${speed(finding.speed)}: from there the machine coasts.`;
    case 'voltageDrops': {
      const after = finding.returns ? '' : ', and it stays out';
      return finding.times === 1
        ? `The dip of the control voltage drops the ${finding.contactor} contactor at ${formatInstant(finding.t)}${after}.`
        : `The ${finding.contactor} contactor chatters: the dip of the control voltage drops it ${finding.times} times, first at ${formatInstant(finding.t)}${after}.`;
    }
    case 'heldByInterlock':
      return `Both coils are energised at ${formatInstant(finding.t)}; only the mechanical interlock keeps the ${finding.contactor} contactor out.`;
    case 'overloadTrips':
      return `The overload relay trips at ${formatInstant(finding.t)}.`;
    default:
      return finding satisfies never;
  }
}
