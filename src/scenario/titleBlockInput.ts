import { day } from './dayInput.ts';
import { group, text } from './field.ts';

const line = (about: string, example: string) =>
  text({ min: 1, max: 100, lines: 'one' }, { about, example }).optional();

/** The title block as a person writes it. */
export const titleBlockInput = group('The title block of the calculation note', {
  plant: line('Where the drive stands', 'Grain store, line 2'),
  tag: line('Tag of the drive', 'M-204'),
  revision: line('Revision of the note', 'B'),
  prepared: line('Who prepared it', 'J. D.'),
  checked: line('Who checked it', 'R. K.'),
  date: day('The day of the note; it is never read from a clock').optional(),
});
