import type { InsertedParts } from './phaseCircuit.ts';
import type { ScenarioShape } from './scenarioShape.ts';
import type { LogEntry } from './switchingRecord.ts';

/** What goes with the two contactors: bypass of the line resistors, steps at the slip rings, star–delta switching. */
export interface AuxiliaryLogic {
  /** A start or plug has been commanded; `opposing`: against the rotation. */
  commanded(plugs: boolean, opposing: boolean, t: number): void;
  energised(t: number): void;
  released(t: number): void;
  /** A start against the rotation has stopped the machine. */
  atRest(t: number): void;
  /** Told whenever it is known whether current can flow. */
  currentless(none: boolean): void;
  inserted(): InsertedParts;
}

interface Agenda {
  at(t: number, tag: string, run: (t: number) => void): void;
  cancel(tag: string): void;
  readonly log: LogEntry[];
}

/** Auxiliary switching of a starter; times are put on the agenda of the contactors. */
export function auxiliaryLogic(scenario: ScenarioShape, agenda: Agenda): AuxiliaryLogic {
  const { lineResistors, plugConnection } = scenario.starter;
  const { rotorResistors } = scenario.machine;
  let bypassed = scenario.initial !== 'rest';
  let rotor = 0;
  let star = false;
  let starWanted = false;
  let opposing = false;
  let parts: InsertedParts | null = null;

  function moveBypass(closes: boolean, t: number): void {
    if (!lineResistors) return;
    agenda.cancel('bypass');
    const delay = closes ? lineResistors.closingTime : lineResistors.openingTime;
    agenda.at(t + delay, 'bypass', () => {
      bypassed = closes;
      parts = null;
    });
  }

  function setRotor(resistance: number): void {
    if (!rotorResistors) return;
    rotor = resistance;
    parts = null;
  }

  /** The first step at once, each next one when the one before has had its time, then none. */
  function beginSteps(t: number): void {
    if (!rotorResistors) return;
    agenda.cancel('rotorStep');
    let until = t;
    const ladder = [...rotorResistors.starting.map((step) => step.resistance), 0];
    setRotor(ladder[0]!);
    rotorResistors.starting.forEach((step, n) => {
      until += step.duration;
      agenda.at(until, 'rotorStep', () => setRotor(ladder[n + 1]!));
    });
  }

  return {
    commanded(plugs, against, _t) {
      opposing = against;
      starWanted = plugs && plugConnection === 'star';
      if (against) setRotor(rotorResistors?.plugging ?? 0);
    },
    energised(t) {
      if (!opposing) {
        moveBypass(true, t);
        beginSteps(t);
      } else if (lineResistors && lineResistors.bypassAfter !== null) {
        agenda.at(t + lineResistors.bypassAfter, 'bypass', (now) => moveBypass(true, now));
      }
    },
    released(t) {
      moveBypass(false, t);
      agenda.cancel('rotorStep');
    },
    atRest(t) {
      opposing = false;
      beginSteps(t);
    },
    currentless(none) {
      if (!none || star === starWanted) return;
      star = starWanted;
      parts = null;
    },
    inserted() {
      parts ??= { line: !lineResistors || bypassed ? 0 : lineResistors.resistance, rotor, star };
      return parts;
    },
  };
}
