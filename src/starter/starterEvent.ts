import type { PhaseName } from '../scenario/scenario.ts';
import type { Device } from './control/controlCircuit.ts';
import type { Root } from './control/controlState.ts';
import type { ContactorName } from './starter.ts';

/** A discrete change of the starter, for the record. */
export interface StarterEvent {
  /** When it happened, s. */
  readonly t: number;
  readonly kind:
    | 'action'
    | 'coilEnergised'
    | 'coilReleased'
    | 'purposeChanges'
    | 'plugRefused'
    | 'poleTouches'
    | 'poleParts'
    | 'poleClears'
    | 'switchCloses'
    | 'switchOpens'
    | 'bypassCloses'
    | 'bypassOpens'
    | 'rotorStep'
    | 'brakeSets'
    | 'brakeReleases'
    | 'injectionBegins'
    | 'injectionRefused'
    | 'injectionEnds'
    | 'injectionIsGone'
    | 'windingReconnected'
    | 'phaseLost'
    | 'phaseClears'
    | 'buttonPressed'
    | 'buttonReleased'
    | 'emergencyStopPressed'
    | 'emergencyStopReleased'
    | 'overloadTrips'
    | 'overloadResets'
    | 'resetRefused'
    | 'relayPicksUp'
    | 'relayDropsOut'
    | 'timerElapses'
    | 'contactorSticks'
    | 'interlockBlocks'
    | 'supplyLost'
    | 'supplyReturns'
    | 'voltageDips'
    | 'voltageRecovers';
  readonly contactor?: ContactorName;
  readonly phase?: PhaseName;
  /** Device of the control circuit. */
  readonly device?: Device;
  /** Coil events of a control circuit: what the coil is there for now. */
  readonly purpose?: 'command' | 'brake';
  /** Coil events of a control circuit: instant of the event from outside that led to it, s. */
  readonly rootTime?: number;
  /** What kind of event that was. */
  readonly rootKind?: Root['kind'];
  /** The zero-speed switch has ended braking. */
  readonly endsPlug?: true;
  /** Words for people, with the cause. */
  readonly text: string;
}
