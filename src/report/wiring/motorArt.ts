import type { Drawing, PlacedText } from './drawing.ts';
import { wire } from './drawing.ts';
import { earthArt } from './iecDevice.ts';
import { box, linkage, ring } from './strokes.ts';
import { designationText, FONT, type SymbolSet } from './symbolSet.ts';
import type { Three } from './threePole.ts';

/** Radius of the motor's circle, px: conductors 30 px apart then meet it 16 px above its middle (16² + 30² = 34²). */
const RADIUS = 34;
/** How far above its middle the outer conductors meet the circle, px. */
const SHOULDER = 16;

/** Terminals of a motor's three lines: IEC 60034-8 (from memory), North American practice. */
const TERMINALS: Readonly<Record<SymbolSet, readonly [string, string, string]>> = {
  iec: ['U', 'V', 'W'],
  us: ['T1', 'T2', 'T3'],
};

/** The motor with its protective earth and, where there is one, the zero-speed switch on its shaft. */
export function placeMotor(
  lines: Three,
  top: number,
  symbols: SymbolSet,
  speedSwitch: string | null,
): Drawing {
  const x = lines[1];
  const y = top + 18 + RADIUS;
  const earth = { x: x - RADIUS - 26, y: y + 24 };
  const names = TERMINALS[symbols];
  const text = (words: string, at: number, baseline: number, size: number): PlacedText => ({
    text: words,
    x: at,
    y: baseline,
    size,
    anchor: 'middle',
  });
  return {
    wires: [
      wire(true, lines[0], top, lines[0], y - SHOULDER),
      wire(true, lines[1], top, lines[1], y - RADIUS),
      wire(true, lines[2], top, lines[2], y - SHOULDER),
      wire(true, x - RADIUS, y, earth.x, y, earth.x, earth.y),
    ],
    symbols: [
      {
        art: ring(0, 0, RADIUS),
        at: { x, y },
        ends: [
          { x: lines[0], y: y - SHOULDER },
          { x: lines[1], y: y - RADIUS },
          { x: lines[2], y: y - SHOULDER },
          { x: x - RADIUS, y },
        ],
        data: { symbol: 'motor', terminals: [...names, 'PE'].join(' ') },
        power: true,
      },
      {
        art: earthArt(symbols === 'iec'),
        at: earth,
        ends: [earth],
        data: { symbol: 'earth' },
        power: true,
      },
      ...(speedSwitch === null
        ? []
        : [
            {
              art: linkage(`M${RADIUS},0 L78,0`) + box(92, 0, 28, 22),
              at: { x, y },
              ends: [],
              data: { symbol: 'speedSwitch' },
              power: false,
            },
          ]),
    ],
    texts: [
      text('M', x, y + 2, 18),
      text('3~', x, y + 18, FONT.note),
      {
        ...text(designationText('M1', symbols), x + RADIUS + 4, y + 22, FONT.designation),
        anchor: 'start',
      },
      ...names.map(
        (name, i): PlacedText => ({
          text: name,
          x: lines[i]! + 4,
          y: top + 10,
          size: FONT.mark,
          anchor: 'start',
        }),
      ),
      {
        ...text(symbols === 'iec' ? 'PE' : 'GND', earth.x + 16, earth.y + 16, FONT.mark),
        anchor: 'start',
      },
      ...(speedSwitch === null
        ? []
        : [
            text('n>', x + 92, y + 4, FONT.mark),
            text(designationText(speedSwitch, symbols), x + 92, y - 16, FONT.designation),
          ]),
    ],
  };
}

/** Height that the motor with its earth takes, px. */
export const MOTOR_HEIGHT = 18 + 2 * RADIUS + 30;
