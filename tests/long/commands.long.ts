import { expect, it } from 'vitest';
import { COMMANDS, LONG_COMMANDS } from '../docs/allShown.ts';
import { expectAsShown } from '../docs/expectAsShown.ts';

const long = COMMANDS.filter(({ title }) => LONG_COMMANDS.includes(title));

it('there are commands that only this test runs', () => {
  expect(long.length).toBe(LONG_COMMANDS.length);
});

it.each(long.map((same) => [same.title, same] as const))('%s does what the pages say', async (_title, same) =>
  expectAsShown(same),
);
