import { z } from 'zod';
import { alternativesInput } from './alternativesInput.ts';
import { contactorsInput } from './contactorsInput.ts';
import { dutyInput } from './dutyInput.ts';
import { packFault } from './fault.ts';
import { group, text } from './field.ts';
import { limitsInput } from './limitsInput.ts';
import { loadInput } from './loadInput.ts';
import { machineInput } from './machineInput.ts';
import { protectionInput } from './protectionInput.ts';
import { actionsInput, initialInput, solverInput } from './runInput.ts';
import { starterInput } from './starterInput.ts';
import { supplyInput } from './supplyInput.ts';
import { thermalInput } from './thermalInput.ts';
import { titleBlockInput } from './titleBlockInput.ts';

/**
 * The one definition of a scenario file: the parser, the JSON Schema and the messages all come from it. Its input is
 * what a person writes; its output has every quantity in SI and nothing filled in yet.
 */
export const scenarioInput = group('A plugging scenario', {
  schemaVersion: z
    .literal(1, {
      error: ({ input }) =>
        packFault(
          'schemaVersion',
          `version ${JSON.stringify(input)} of the scenario format is not known`,
          '1',
        ),
    })
    .meta({ description: 'Version of this format.', default: 1 })
    .optional(),
  title: text(
    { min: 1, max: 200, lines: 'one' },
    { about: 'One line that names the scenario', example: 'Tea belt, 7.5 kW' },
  ),
  description: text(
    { min: 0, max: 10_000, lines: 'several' },
    {
      about: 'Free text about the setting',
      example: 'A belt that must stop within one tray length.',
    },
  ).optional(),
  supply: supplyInput,
  machine: machineInput,
  load: loadInput,
  starter: starterInput.optional(),
  initial: initialInput.optional(),
  actions: actionsInput,
  solver: solverInput.optional(),
  titleBlock: titleBlockInput.optional(),
  thermal: thermalInput.optional(),
  duty: dutyInput.optional(),
  contactors: contactorsInput.optional(),
  limits: limitsInput.optional(),
  protection: protectionInput.optional(),
  alternatives: alternativesInput.optional(),
});

/** A scenario as read and checked, before defaults are resolved. */
export type ScenarioInput = z.output<typeof scenarioInput>;
