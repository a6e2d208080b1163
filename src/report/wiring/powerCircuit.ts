import type { StarterData } from '../../scenario/scenario.ts';
import { supplyPhases } from '../../starter/conduction.ts';
import type { ControlCircuit } from '../../starter/control/controlCircuit.ts';
import { DESIGNATIONS, inputsOf } from '../../starter/control/controlCircuit.ts';
import { type Drawing, type PlacedSymbol, together } from './drawing.ts';
import { handleArt, mechanicalInterlockArt } from './iecContact.ts';
import { resistorArt } from './iecDevice.ts';
import { MOTOR_HEIGHT, placeMotor } from './motorArt.ts';
import { POWER_ART } from './powerArt.ts';
import { box, linkage, ring } from './strokes.ts';
import { designationText, FONT, type SymbolSet } from './symbolSet.ts';
import {
  BRIDGED_HEIGHT,
  BRIDGED_MIDDLE,
  between,
  bridged,
  down,
  HALF,
  POLE_MARKS,
  type Three,
  type ThreePoleDevice,
  threePole,
} from './threePole.ts';

/** The power circuit on the sheet. */
export interface PowerCircuit {
  readonly drawing: Drawing;
  /** Designations in it that no control circuit names, with words, in the order of the drawing. */
  readonly devices: readonly (readonly [string, string])[];
  /** Where the control transformer is tapped off: x of the first two conductors, y of the upper and the lower tap. */
  readonly taps: { readonly x: readonly [number, number]; readonly y: readonly [number, number] };
  readonly bottom: number;
}

/** x of the three lines, and of the poles beside them. */
const LINES: Three = [74, 104, 134];
const RIGHT: Three = [206, 236, 266];
/** Height of the control transformer's windings, px. */
const WINDING = 40;

/** Draws the power circuit from the lines at `top` to the motor. */
export function powerCircuit(
  circuit: ControlCircuit,
  starter: StarterData,
  symbols: SymbolSet,
  top: number,
): PowerCircuit {
  const art = POWER_ART[symbols];
  const name = (designation: string) => designationText(designation, symbols);
  const device = (
    symbol: ThreePoleDevice['symbol'],
    designation: string,
    picture: string,
    side: 'left' | 'right' = 'left',
  ): ThreePoleDevice => ({
    symbol,
    designation: name(designation),
    art: picture,
    marks: symbol === 'resistor' ? null : POLE_MARKS,
    side,
  });
  const inputs = inputsOf(circuit);
  const overload = inputs.includes('overload');
  const speedSwitch =
    starter.zeroSpeedSwitch !== null || inputs.includes('switchForward') || inputs.includes('switchReverse');
  const parts: Drawing[] = [supplyLines(top)];
  let y = top;

  const disconnector = y + HALF;
  parts.push(threePole(device('disconnector', 'Q1', art.disconnector), LINES, disconnector), {
    wires: [],
    symbols: [handle(disconnector), link(LINES, disconnector)],
    texts: [],
  });
  y += 2 * HALF;
  const taps = [y + 14, y + 14 + WINDING] as const;
  parts.push(down(LINES, y, y + 28 + WINDING));
  y += 28 + WINDING;
  parts.push(
    threePole(device('fuse', 'F1', art.fuse), LINES, y + HALF),
    down(LINES, y + 2 * HALF, y + 2 * HALF + 12),
  );
  y += 2 * HALF + 12;

  parts.push(
    bridged(
      device('pole', DESIGNATIONS.forwardContactor, art.pole),
      device('pole', DESIGNATIONS.reverseContactor, art.pole, 'right'),
      LINES,
      RIGHT,
      terminalOfPole(starter),
      y,
    ),
    contactorLinks(y + BRIDGED_MIDDLE, starter.control?.mechanicalInterlock === true),
  );
  y += BRIDGED_HEIGHT;
  if (overload) {
    parts.push(threePole(device('heater', DESIGNATIONS.overload, art.heater), LINES, y + HALF));
    if (symbols === 'iec') parts.push({ wires: [], symbols: [relayBox(y + HALF)], texts: [] });
    y += 2 * HALF;
  }
  if (starter.lineResistors !== undefined) {
    parts.push(
      down(LINES, y, y + 10),
      bridged(
        device('resistor', 'R1', resistorArt(HALF)),
        device('pole', 'K10', art.pole, 'right'),
        LINES,
        RIGHT,
        [0, 1, 2],
        y + 10,
      ),
      { wires: [], symbols: [link(RIGHT, y + 10 + BRIDGED_MIDDLE)], texts: [] },
    );
    y += 10 + BRIDGED_HEIGHT;
  }
  parts.push(placeMotor(LINES, y, symbols, speedSwitch ? DESIGNATIONS.switchForward : null));
  y += MOTOR_HEIGHT;

  return {
    drawing: together(parts),
    devices: [
      ['Q1', 'disconnector'],
      ['F1', 'motor fuses'],
      ...(starter.lineResistors === undefined
        ? []
        : ([
            ['R1', 'line resistors'],
            ['K10', 'bypass of the line resistors'],
          ] as const)),
      ['M1', 'motor'],
      ...(starter.zeroSpeedSwitch !== null && !inputs.some((one) => one.startsWith('switch'))
        ? ([[DESIGNATIONS.switchForward, 'zero-speed switch']] as const)
        : []),
    ],
    taps: { x: [LINES[0], LINES[1]], y: taps },
    bottom: y,
  };
}

/** Motor conductor that pole p of the reversing contactor leads to: pole p hangs on supply phase p. */
function terminalOfPole(starter: StarterData): Three {
  const phases = supplyPhases(starter, 'reverse');
  return [phases.indexOf(0), phases.indexOf(1), phases.indexOf(2)];
}

function supplyLines(top: number): Drawing {
  return {
    wires: [],
    symbols: LINES.map((x, i) => ({
      art: ring(0, -3, 3),
      at: { x, y: top },
      ends: [{ x, y: top }],
      data: { symbol: 'supply', line: `L${i + 1}` },
      power: true,
    })),
    texts: LINES.map((x, i) => ({
      text: `L${i + 1}`,
      x,
      y: top - 11,
      size: FONT.designation,
      anchor: 'middle',
    })),
  };
}

function decoration(art: string, x: number, y: number, symbol: string): PlacedSymbol {
  return { art, at: { x, y }, ends: [], data: { symbol }, power: false };
}

function handle(y: number): PlacedSymbol {
  return decoration(handleArt(), LINES[0], y, 'handle');
}

/** The mechanical connection of three poles. */
function link(xs: Three, y: number): PlacedSymbol {
  return decoration(linkage(`M-5,0.5 L${xs[2] - xs[0] - 5},0.5`), xs[0], y, 'linkage');
}

function contactorLinks(y: number, interlocked: boolean): Drawing {
  const middle = between(LINES, RIGHT, y);
  const apart = RIGHT[0] - LINES[2];
  const symbols = [
    link(LINES, y),
    link(RIGHT, y),
    ...(interlocked
      ? [
          decoration(
            linkage(`M${-apart / 2 - 5},0.5 L-6,0.5`) +
              linkage(`M6,0.5 L${apart / 2 - 5},0.5`) +
              mechanicalInterlockArt(),
            middle.x,
            middle.y,
            'mechanicalInterlock',
          ),
        ]
      : []),
  ];
  return { wires: [], symbols, texts: [] };
}

/** The overload relay is one device: a box around the three parts that the conductors heat. */
function relayBox(y: number): PlacedSymbol {
  const width = LINES[2] - LINES[0] + 30;
  return decoration(box(LINES[1] - LINES[0] + 2, 0, width, 24), LINES[0], y, 'overloadRelay');
}
