import { z } from 'zod';
import { bounds } from './bounds.ts';
import { closestWord } from './closestWord.ts';
import { couplingInput, gearInput } from './driveInput.ts';
import { describeValue, packFault, packTypeFault } from './fault.ts';
import { group, quantity, word } from './field.ts';

const kinds = ['friction', 'viscous', 'fan', 'gravity', 'constantPower', 'table'] as const;

/** The word that says which load it is. */
function kindOf<const K extends (typeof kinds)[number]>(kind: K) {
  return z.literal(kind).meta({ description: `The kind of load: ${kind}.` });
}

const friction = group('Dry friction: opposes motion, holds the shaft at rest up to the breakaway torque', {
  kind: kindOf('friction'),
  torque: quantity(bounds.loadTorque, { about: 'Friction torque while turning', example: '20 N m' }),
  breakaway: quantity(bounds.loadTorque, {
    about: 'Torque that sets the shaft in motion; as large as torque if left out',
    example: '30 N m',
  }).optional(),
}).superRefine((load, context) => {
  if (load.breakaway !== undefined && load.breakaway < load.torque) {
    const message = packFault(
      'conflict',
      'is below the friction torque',
      'a breakaway torque at least as large',
    );
    context.addIssue({ code: 'custom', path: ['breakaway'], message });
  }
});

const viscous = group('Torque proportional to speed', {
  kind: kindOf('viscous'),
  torque: quantity(bounds.loadTorque, { about: 'Torque at the speed atSpeed', example: '20 N m' }).optional(),
  atSpeed: quantity(bounds.speed, { about: 'Speed at which torque holds', example: '1450 rpm' }).optional(),
  coefficient: quantity(bounds.viscousCoefficient, {
    about: 'Torque over speed, instead of torque and atSpeed',
    example: '0.1 N m s/rad',
  }).optional(),
}).superRefine(pointOrCoefficient);

const fan = group('Fan or pump: torque proportional to the square of speed, against the motion', {
  kind: kindOf('fan'),
  torque: quantity(bounds.loadTorque, { about: 'Torque at the speed atSpeed', example: '40 N m' }).optional(),
  atSpeed: quantity(bounds.speed, { about: 'Speed at which torque holds', example: '1450 rpm' }).optional(),
  coefficient: quantity(bounds.fanCoefficient, {
    about: 'Torque over speed squared, instead of torque and atSpeed',
    example: '0.002 N m s^2/rad^2',
  }).optional(),
}).superRefine(pointOrCoefficient);

const gravity = group('Gravity: pulls the same way whichever way the shaft turns', {
  kind: kindOf('gravity'),
  torque: quantity(bounds.gravityTorque, {
    about: 'Torque; positive pulls against forward rotation',
    example: '60 N m',
  }),
});

const constantPower = group(
  'Constant power above a base speed and constant torque below it; opposes motion and holds the shaft at rest',
  {
    kind: kindOf('constantPower'),
    power: quantity(bounds.loadPower, { about: 'Power above baseSpeed', example: '5 kW' }),
    baseSpeed: quantity(bounds.baseSpeed, {
      about: 'Speed below which the torque stays as it is there',
      example: '600 rpm',
    }),
  },
);

const point = group('One point of the table', {
  speed: quantity(bounds.tableSpeed, { about: 'Speed', example: '1500 rpm' }),
  torque: quantity(bounds.gravityTorque, { about: 'Torque at that speed', example: '42 N m' }),
});

const table = group('A measured torque: straight lines through points of ascending speed', {
  kind: kindOf('table'),
  points: z
    .array(point, { error: ({ input }) => packTypeFault(input, 'a list of points, each speed and torque') })
    .min(2, {
      error: () => packFault('outOfRange', 'has fewer than two points', 'two points or more'),
    })
    .max(1000, { error: () => packFault('outOfRange', 'the list is too long', 'at most 1000 points') })
    .meta({
      description:
        'Points in ascending order of speed, up to 1.2 times synchronous speed (behind a gear, over its ratio).',
      examples: [
        [
          { speed: '0 rpm', torque: '8 N m' },
          { speed: '1800 rpm', torque: '42 N m' },
        ],
      ],
    }),
  direction: word(['opposes motion', 'as given'], {
    about:
      'opposes motion: the points are for speeds from 0 up and hold in both directions against the motion; as given: from reverse to forward speeds, positive pulls against forward rotation',
    default: 'opposes motion',
  }).optional(),
});

const torqueKinds = [friction, viscous, fan, gravity, constantPower, table] as const;

const loadTorque = z.discriminatedUnion('kind', torqueKinds, {
  error: ({ input }) => {
    const expected = `one of ${kinds.map((kind) => `\`${kind}\``).join(', ')}`;
    if (typeof input !== 'object' || input === null || Array.isArray(input)) {
      return packTypeFault(input, `a load such as \`{ kind: friction, torque: 20 N m }\``);
    }
    const kind: unknown = 'kind' in input ? input.kind : undefined;
    if (kind === undefined || kind === null) return packTypeFault(kind, expected);
    const close = typeof kind === 'string' ? closestWord(kind, kinds) : undefined;
    const hint = close === undefined ? expected : `\`${close}\` (${expected})`;
    return packFault('unknownWord', `${describeValue(kind)} is not a kind of load`, hint);
  },
});

const listOfTorques = z.array(loadTorque, {
  error: ({ input }) => packTypeFault(input, 'a list of loads'),
});

const noTorque = z.literal('none', {
  error: ({ input }) =>
    packTypeFault(input, '`none`, one load such as `{ kind: friction, torque: 20 N m }`, or a list of loads'),
});

/** The load as a person writes it. */
export const loadInput = group('What the motor drives', {
  gear: gearInput.optional(),
  coupling: couplingInput.optional(),
  inertia: quantity(bounds.inertia, {
    about: "Load inertia at the load's shaft, which without a gear is the motor's",
    example: '3.3 kg m^2',
  }),
  torque: z.union([noTorque, loadTorque, listOfTorques]).meta({
    description:
      "Load torque at the load's shaft (without a gear the motor's): `none`, one load, or a list of loads that are added up.",
    examples: ['none', { kind: 'friction', torque: '20 N m' }],
  }),
});

interface PointOrCoefficient {
  readonly torque?: number | undefined;
  readonly atSpeed?: number | undefined;
  readonly coefficient?: number | undefined;
}

function pointOrCoefficient(load: PointOrCoefficient, context: z.RefinementCtx): void {
  const point = [load.torque, load.atSpeed].filter((value) => value !== undefined).length;
  const stated = load.coefficient === undefined ? 0 : 1;
  if ((stated === 1 && point === 0) || (stated === 0 && point === 2)) return;
  const message =
    stated === 1 ? 'states a coefficient and a torque or speed as well' : 'states no complete torque law';
  context.addIssue({
    code: 'custom',
    message: packFault('conflict', message, 'either torque and atSpeed, or coefficient'),
  });
}
