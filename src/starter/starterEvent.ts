import type { PhaseName } from '../scenario/scenario.ts';
import type { ContactorName } from './starter.ts';

/** A discrete change of the starter, for the record. */
export interface StarterEvent {
  readonly t: number;
  readonly kind:
    | 'action'
    | 'coilEnergised'
    | 'coilReleased'
    | 'plugRefused'
    | 'poleTouches'
    | 'poleParts'
    | 'poleClears'
    | 'switchCloses'
    | 'switchOpens'
    | 'bypassCloses'
    | 'bypassOpens'
    | 'rotorStep'
    | 'windingReconnected'
    | 'phaseLost'
    | 'phaseClears';
  readonly contactor?: ContactorName;
  readonly phase?: PhaseName;
  /** Words for people, with the cause. */
  readonly text: string;
}
