import { contradiction } from './contradiction.ts';
import { typicalLeakageKnee, typicalLeakageRemaining, typicalMagnetisingCurve } from './defaults.ts';
import type { CircuitPart } from './nameplate.ts';
import { derivedValue, type Note } from './origin.ts';
import type { RatedCircuit } from './resolveMachine.ts';
import type { LeakageSaturation, LeakageSaturationData, MachineData, MagnetisingPoint } from './scenario.ts';
import type { ScenarioInput } from './scenarioInput.ts';
import { stated } from './stated.ts';

type Saturation = NonNullable<ScenarioInput['machine']['saturation']>;

/**
 * Fills in saturation. What is stated wins over what an estimation found; what neither gives is absent.
 *
 * @param input as stated, in SI
 * @param circuit with its rating
 * @param note takes down what was not given
 * @throws ScenarioError where a curve and the stator leakage contradict each other, or no rated current is known
 */
export function resolveSaturation(
  input: Saturation | undefined,
  circuit: RatedCircuit,
  note: Note,
): Pick<MachineData, 'mainSaturation' | 'leakageSaturation'> {
  const { part } = circuit;
  const mainSaturation = input?.main === undefined ? part.mainSaturation : mainOf(input.main, circuit, note);
  const leakageSaturation =
    input?.leakage === undefined ? part.leakageSaturation : leakageOf(input.leakage, part, note);
  if (input?.main === undefined && mainSaturation === undefined) note('saturation.main', 'off', 'default');
  if (input?.leakage === undefined && leakageSaturation === undefined)
    note('saturation.leakage', 'off', 'default');
  return {
    ...(mainSaturation === undefined ? {} : { mainSaturation }),
    ...(leakageSaturation === undefined ? {} : { leakageSaturation }),
  };
}

function mainOf(
  main: NonNullable<Saturation['main']>,
  { part, rating }: RatedCircuit,
  note: Note,
): readonly MagnetisingPoint[] | undefined {
  if (main === 'off') return undefined;
  const omega = 2 * Math.PI * rating.frequency;
  const crestOfPhase = Math.sqrt(2 / 3) * rating.lineVoltage;
  if (main === 'typical') {
    const current = crestOfPhase / (omega * (part.Lls + part.Lm));
    const flux = part.Lm * current;
    const curve = typicalMagnetisingCurve.map(([ofFlux, ofCurrent]) => ({
      current: ofCurrent * current,
      flux: ofFlux * flux,
    }));
    const reason = 'typical curve through the magnetising reactance at rated voltage and no load';
    notePoints(curve, 'assumed', `${reason}; common practice, no source`, note);
    return curve;
  }
  if (main[0]?.flux !== undefined)
    return main.map((point) => ({
      current: stated(point.magnetisingCurrent, 'magnetisingCurrent'),
      flux: stated(point.flux, 'flux'),
    }));
  const points = main.map((point) => {
    const current = Math.SQRT2 * stated(point.current, 'current');
    const linkage = (Math.sqrt(2 / 3) * stated(point.voltage, 'voltage')) / omega;
    return { current, flux: linkage - part.Lls * current };
  });
  for (const [index, { flux }] of points.entries()) {
    if (flux > (points[index - 1]?.flux ?? 0)) continue;
    const drop = omega * part.Lls;
    throw contradiction(
      `machine.saturation.main.${index}`,
      `point ${index + 1}`,
      `leaves ${index === 0 ? 'no flux' : 'no more flux than the point before'} once the drop in the stator leakage of ${Number(drop.toPrecision(4))} ohm is taken off`,
      'line voltage and line current of the no-load test, and the stator leakage of the same machine',
    );
  }
  notePoints(points, 'derived', 'no-load points less the drop in the stator leakage', note);
  return points;
}

function notePoints(
  points: readonly MagnetisingPoint[],
  kind: 'assumed' | 'derived',
  source: string,
  note: Note,
): void {
  for (const [index, { flux, current }] of points.entries())
    note(
      `saturation.curve.${index}`,
      `${derivedValue(flux, 'Wb')}, ${derivedValue(current, 'A')}`,
      kind,
      source,
    );
}

function leakageOf(
  leakage: NonNullable<Saturation['leakage']>,
  part: CircuitPart,
  note: Note,
): LeakageSaturationData | undefined {
  if (leakage === 'off') return undefined;
  if (leakage === 'typical') {
    if (part.rated.current === null)
      throw contradiction(
        'machine.saturation.leakage',
        'typical',
        'is counted from the rated current, which is not known',
        'the rated current, or the currents of the paths one by one',
      );
    const current = typicalLeakageKnee * Math.SQRT2 * part.rated.current;
    const path: LeakageSaturation = { current, remaining: typicalLeakageRemaining };
    const source = 'typical; common practice, no source';
    note('saturation.knee', derivedValue(current, 'A'), 'assumed', source);
    note('saturation.remaining', `${typicalLeakageRemaining * 100} %`, 'assumed', source);
    return { stator: path, cages: part.cages.map(() => path) };
  }
  if (leakage.cages.length !== part.cages.length)
    throw contradiction(
      'machine.saturation.leakage.cages',
      `${leakage.cages.length} entries`,
      `the circuit has ${part.cages.length} cages`,
      'one entry per cage',
    );
  const pathOf = (path: LeakageSaturation | 'off') => (path === 'off' ? null : path);
  return { stator: pathOf(leakage.stator), cages: leakage.cages.map(pathOf) };
}
