import { z } from 'zod';
import type { NewScenarioAnswers } from '../report/newScenarioAnswers.ts';
import { bounds } from '../scenario/bounds.ts';
import { gearInput } from '../scenario/driveInput.ts';
import { quantity, word } from '../scenario/field.ts';
import { keyword } from '../scenario/keyword.ts';
import { loadInput } from '../scenario/loadInput.ts';
import { starterInput } from '../scenario/starterInput.ts';
import type { Question } from './question.ts';

const starter = starterInput.shape;

const hasLoad = {
  holds: ({ load }: NewScenarioAnswers) => load === 'friction' || load === 'fan' || load === 'hoist',
  words: '--load friction, fan or hoist',
};

/** What `new` asks about gear, load, starter and the run. */
export const DRIVE_QUESTIONS: readonly Question[] = [
  {
    key: 'gearRatio',
    group: 'Load',
    asks: 'Gear: motor speed over load speed',
    example: '12.5',
    schema: gearInput.shape.ratio,
    paths: ['load.gear.ratio'],
    takes: 'number',
  },
  {
    key: 'gearEfficiency',
    group: 'Load',
    asks: 'Gear: efficiency',
    example: '94 %',
    schema: gearInput.shape.efficiency,
    paths: ['load.gear.efficiency', 'load.gear'],
    takes: 'number',
    when: { holds: ({ gearRatio }) => gearRatio !== undefined, words: '--gear-ratio' },
  },
  {
    key: 'loadInertia',
    group: 'Load',
    asks: 'Inertia of the load',
    example: '0.5 kg m^2',
    schema: loadInput.shape.inertia,
    paths: ['load.inertia'],
    takes: 'number',
    unit: 'kg·m²',
  },
  {
    key: 'load',
    group: 'Load',
    asks: 'Kind of load torque',
    example: 'friction, fan, hoist or none',
    schema: word(['friction', 'fan', 'hoist', 'none'], { about: 'Kind of load torque' }),
    paths: ['load.torque.kind', 'load.torque'],
    takes: 'word',
  },
  {
    key: 'loadTorque',
    group: 'Load',
    asks: 'Load torque',
    example: '20 N m',
    schema: quantity(bounds.gravityTorque, { about: 'Load torque', example: '20 N m' }),
    paths: ['load.torque.torque'],
    takes: 'number',
    unit: 'N·m',
    when: hasLoad,
    needed: () => true,
  },
  {
    key: 'loadSpeed',
    group: 'Load',
    asks: 'Speed of the fan at that torque',
    example: '1455 rpm',
    schema: quantity(bounds.speed, { about: 'Speed at which the torque holds', example: '1455 rpm' }),
    paths: ['load.torque.atSpeed'],
    takes: 'number',
    unit: 'rad/s',
    when: { holds: ({ load }) => load === 'fan', words: '--load fan' },
  },
  {
    key: 'closingTime',
    group: 'Starter',
    asks: 'Contactors: coil on to contacts touching',
    example: '20 ms',
    schema: starter.closingTime,
    paths: ['starter.closingTime'],
    takes: 'number',
    unit: 's',
  },
  {
    key: 'openingTime',
    group: 'Starter',
    asks: 'Contactors: coil off to contacts parting',
    example: '10 ms',
    schema: starter.openingTime,
    paths: ['starter.openingTime'],
    takes: 'number',
    unit: 's',
  },
  {
    key: 'deadTime',
    group: 'Starter',
    asks: 'Dead time: contacts parting to contacts touching',
    example: '20 ms',
    schema: starter.deadTime,
    paths: ['starter.deadTime', 'starter.changeoverDelay'],
    takes: 'number',
    unit: 's',
  },
  {
    key: 'switchOffSpeed',
    group: 'Starter',
    asks: 'Zero-speed switch: drop-out speed, or off',
    example: '50 rpm',
    schema: z.union([
      quantity(bounds.speed, { about: 'Drop-out speed', example: '50 rpm' }),
      keyword(['off'], '`off`, or a speed such as `50 rpm`'),
    ]),
    paths: ['starter.zeroSpeedSwitch'],
    takes: 'number',
    unit: 'rad/s',
  },
  {
    key: 'plugAt',
    group: 'Run',
    asks: 'Plug how long after a start from rest',
    example: '2 s',
    schema: quantity(bounds.instant, { about: 'When plugging begins', example: '2 s' }),
    paths: ['actions'],
    takes: 'number',
    unit: 's',
  },
];
