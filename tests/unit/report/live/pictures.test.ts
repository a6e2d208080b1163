import { describe, expect, it } from 'vitest';
import { energyAt, energyPicture } from '../../../../src/report/live/energyAt.ts';
import { feedAt } from '../../../../src/report/live/feedAt.ts';
import { CENTRE, fieldArrow, fieldPoint, RADIUS } from '../../../../src/report/live/fieldArrow.ts';
import { fieldAxes } from '../../../../src/report/live/fieldAxes.ts';
import { fieldPicture } from '../../../../src/report/live/fieldPicture.ts';
import { fieldTrail } from '../../../../src/report/live/fieldTrail.ts';
import { frameAt } from '../../../../src/report/live/frameAt.ts';
import { motionWords } from '../../../../src/report/live/motionWords.ts';
import { shaftMark } from '../../../../src/report/live/shaftMark.ts';
import { thermalBar } from '../../../../src/report/live/thermalBar.ts';
import { energyRow, type FilmFunctions, fakeFilm } from './fakeFilm.ts';

const OMEGA = 2 * Math.PI * 50;
/** Angle of a point of the drawing from the axis of phase A, against the clock, 0 … 360°. */
function degreesOf({ x, y }: { readonly x: number; readonly y: number }): number {
  return ((Math.atan2(CENTRE - y, x - CENTRE) * 180) / Math.PI + 360) % 360;
}
function lengthOf({ x, y }: { readonly x: number; readonly y: number }): number {
  return Math.hypot(x - CENTRE, y - CENTRE);
}
function picture(functions: FilmFunctions, more = {}) {
  const film = fakeFilm(functions, 0.1, more);
  return fieldPicture(film, frameAt(film, 0.05));
}

describe('an arrow of the field', () => {
  it('points where the vector points, upwards for the positive imaginary axis', () => {
    expect(degreesOf(fieldArrow(1, 0, 1))).toBeCloseTo(0, 9);
    expect(degreesOf(fieldArrow(0, 1, 1))).toBeCloseTo(90, 9);
    expect(fieldArrow(0, 1, 1).y).toBeLessThan(CENTRE);
    expect(degreesOf(fieldArrow(-1, -Math.sqrt(3), 2))).toBeCloseTo(240, 9);
  });

  it('is as long as its share of the full magnitude, and cut and marked above it', () => {
    expect(lengthOf(fieldArrow(0.3, 0.4, 1))).toBeCloseTo(0.5 * RADIUS.arrow, 9);
    expect(fieldArrow(0.3, 0.4, 1)).toMatchObject({ cut: false, bar: '' });
    const cut = fieldArrow(3, 4, 1);
    expect(lengthOf(cut)).toBeCloseTo(RADIUS.arrow, 9);
    expect(cut.cut).toBe(true);
    expect(cut.bar).not.toBe('');
  });

  it('of nothing has neither length nor head, also when its base is nothing', () => {
    for (const arrow of [fieldArrow(0, 0, 1), fieldArrow(1, 1, 0)])
      expect(arrow).toMatchObject({ x: CENTRE, y: CENTRE, head: '', cut: false });
  });
});

describe('the picture of the field', () => {
  it('has the axes of the phases a third of a turn apart, against the clock', () => {
    expect(fieldAxes().map((axis) => [axis.phase, Math.round(degreesOf(axis))])).toEqual([
      ['A', 0],
      ['B', 120],
      ['C', 240],
    ]);
  });

  it('puts the current of phases A, B and C on their axes', () => {
    const cosines = { iA: () => 60, iB: () => -30, iC: () => -30 };
    expect(degreesOf(picture(cosines).current)).toBeCloseTo(0, 9);
    const onB = picture({ iA: () => -30, iB: () => 60, iC: () => -30 }).current;
    expect(degreesOf(onB)).toBeCloseTo(120, 9);
    // 60 A crest of a machine with 10 A rated crest: half of the twelvefold that fills the length.
    expect(lengthOf(onB)).toBeCloseTo(0.5 * RADIUS.arrow, 9);
  });

  it('turns the rotor by pole pairs times the shaft', () => {
    // An eighth of a turn of the shaft with two pairs of poles: a quarter of an electrical turn.
    expect(picture({ position: () => Math.PI / 4 }).rotor.degrees).toBeCloseTo(90, 9);
    expect(picture({ position: () => -Math.PI / 4 }).rotor.degrees).toBeCloseTo(270, 9);
  });

  it('of a field at 50 Hz turns once in 20 ms and leaves half a turn behind it', () => {
    const turning = {
      psiAlpha: (t: number) => Math.cos(OMEGA * t + 0.4),
      psiBeta: (t: number) => Math.sin(OMEGA * t + 0.4),
    };
    const film = fakeFilm(turning, 0.1, {}, 1001);
    const angle = (t: number) => degreesOf(fieldPicture(film, frameAt(film, t)).statorFlux);
    expect(angle(0.05)).toBeCloseTo(angle(0.07), 6);
    expect((angle(0.055) - angle(0.05) + 360) % 360).toBeCloseTo(90, 6);
    const trail = fieldTrail(film, 0.06, 41)
      .split(' ')
      .map((pair) => pair.split(',').map(Number))
      .map(([x, y]) => ({ x: x!, y: y! }));
    expect(trail).toHaveLength(41);
    // The numbers of a trail have one decimal: at this radius 0.1°.
    expect(Math.abs(degreesOf(trail.at(-1)!) - angle(0.06))).toBeLessThan(0.2);
    expect(Math.abs(((degreesOf(trail[0]!) + 180) % 360) - angle(0.06))).toBeLessThan(0.2);
    expect((degreesOf(trail[20]!) + 90) % 360).toBeCloseTo(angle(0.06), 0);
  });

  it('says how far the stator flux is ahead, and that this is a forward torque', () => {
    const fluxes = (ahead: number): FilmFunctions => ({
      psiRAlpha: () => 0.9 * Math.cos(2),
      psiRBeta: () => 0.9 * Math.sin(2),
      psiAlpha: () => Math.cos(2 + ahead),
      psiBeta: () => Math.sin(2 + ahead),
    });
    expect(picture(fluxes(Math.PI / 6)).fluxWords).toBe(
      'rotor flux 0.900 of that at no load, stator flux 30° ahead of it: torque forward',
    );
    expect(picture(fluxes(-Math.PI / 2)).fluxWords).toMatch(/90° behind it: torque in reverse/u);
    expect(picture(fluxes(0)).fluxWords).toMatch(/in line/u);
    expect(picture({}).fluxWords).toBe('no flux in the rotor');
  });

  it('says the slip against the sequence that is applied now', () => {
    const slip = (sequence: 1 | -1 | 0, conducting: 3 | 2 | 0) =>
      picture({ speed: () => 1455 }, { feeds: [{ t: 0, sequence, conducting }] }).slipWords;
    expect(slip(1, 3)).toBe('slip 0.0300 against the forward field');
    expect(slip(-1, 3)).toBe('slip 1.97 against the reversed field');
    expect(slip(-1, 2)).toMatch(/two phases/u);
    expect(slip(0, 0)).toMatch(/no phase connected/u);
    expect(slip(0, 2)).toMatch(/direct current/u);
  });

  it('takes the feed that has begun', () => {
    const feeds = [
      { t: 0, sequence: 1, conducting: 3 },
      { t: 1, sequence: -1, conducting: 3 },
    ] as const;
    expect(feedAt(feeds, 0.999).sequence).toBe(1);
    expect(feedAt(feeds, 1).sequence).toBe(-1);
    expect(feedAt([], 1).conducting).toBe(0);
  });
});

describe('the bars of energy', () => {
  const film = fakeFilm({}, 2, {
    energies: {
      t: Float64Array.of(0, 1, 2),
      rows: [energyRow('in', 0, 4, 10), energyRow('shaft', 0, 2, -6), energyRow('iron', 0, 0, 1e-7)],
    },
  });

  it('grow on straight lines against the largest of the whole run', () => {
    expect(energyAt(film, 1.5).map(({ text, share, sign }) => [text, share, sign])).toEqual([
      ['7.00 kJ', 0.7, 1],
      ['−2.00 kJ', 0.2, -1],
      ['0 kJ', 0, 0],
    ]);
    expect(energyAt(film, -1).map(({ share }) => share)).toEqual([0, 0, 0]);
  });

  it('stand on a zero that does not move, inside the drawing', () => {
    for (const t of [0, 0.5, 1, 1.7, 2]) {
      const { zeroX, bars } = energyPicture(film, t);
      // 6 of 16 kJ are below zero.
      expect(zeroX).toBeCloseTo(37.5, 12);
      for (const { x, width, sign } of bars) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x + width).toBeLessThanOrEqual(100 + 1e-9);
        expect(sign < 0 ? x + width : x).toBeCloseTo(zeroX, 9);
      }
    }
    expect(energyPicture(film, 2).bars[0]?.width).toBeCloseTo(62.5, 9);
  });

  it('of a run without energy are nothing', () => {
    const none = fakeFilm({}, 1, { energies: { t: Float64Array.of(0, 1), rows: [energyRow('in', 0, 0)] } });
    expect(energyPicture(none, 1)).toMatchObject({ zeroX: 0, bars: [{ width: 0, x: 0 }] });
  });
});

describe('motor and load in words', () => {
  const words = (speed: number, torque: number, loadTorque: number) => {
    const film = fakeFilm({ speed: () => speed, torque: () => torque, loadTorque: () => loadTorque }, 1);
    return motionWords(film, frameAt(film, 0.5));
  };

  it('drives with the torque along the rotation, brakes against it', () => {
    expect(words(1456, 48.1, 14)).toEqual({
      direction: 'forward',
      speed: '1456 r/min forward',
      torque: 'drives forward with 48.1 N·m',
      load: 'takes 14.0 N·m',
    });
    expect(words(1456, -96, 14).torque).toBe('brakes with 96.0 N·m');
    expect(words(-700, -96, -14)).toMatchObject({
      speed: '700 r/min reverse',
      torque: 'drives in reverse with 96.0 N·m',
      load: 'takes 14.0 N·m',
    });
    expect(words(-700, 96, 14)).toMatchObject({
      torque: 'brakes with 96.0 N·m',
      load: 'drives with 14.0 N·m',
    });
  });

  it('at rest says so, and little is nothing', () => {
    expect(words(0.4, 0.4, 0)).toEqual({
      direction: 'rest',
      speed: 'at rest',
      torque: 'no torque',
      load: 'no torque',
    });
    expect(words(0, -60, 0).torque).toBe('drives in reverse with 60.0 N·m');
  });
});

describe('small drawings', () => {
  it('turn the mark on the shaft as the picture of the field does: from the right, against the clock for forward', () => {
    for (const position of [0, 0.4, Math.PI / 2, -2]) {
      const { x1, y1, x2, y2 } = shaftMark({ position });
      const { x, y } = fieldPoint(1, position);
      // Both point away from their own middle, 30 and CENTRE.
      for (const [dx, dy] of [
        [x1 - 30, y1 - 30],
        [x2 - 30, y2 - 30],
      ] as const)
        expect(Math.atan2(dy, dx)).toBeCloseTo(Math.atan2(y - CENTRE, x - CENTRE), 9);
    }
  });

  it('put the trip level at four fifths of the bar of a thermal memory, and end with the bar', () => {
    expect(thermalBar({ tripped: false, share: 0.5 })).toEqual({
      width: 40,
      tripX: 80,
      text: '50.0 % of the trip level',
    });
    expect(thermalBar({ tripped: true, share: 1 }).width).toBe(80);
    expect(thermalBar({ tripped: true, share: 9 }).width).toBe(100);
  });
});
