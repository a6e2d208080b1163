/**
 * How much of a file is looked at. A scenario is a page or two of text; these are far above that and keep the time a
 * hostile file can cost to about a second.
 */

/** Characters; a hundred times the longest scenario worth writing by hand. */
export const maxCharacters = 262_144;

/** Levels of lists and groups inside each other; a scenario needs five. */
export const maxDepth = 32;

/** Smallest pieces of YAML syntax; a long scenario has about a thousand. */
export const maxTokens = 40_000;

/** Values in a scenario handed over as an object. */
export const maxValues = 20_000;

/** Actions in a scenario, and presses and releases that its buttons come to. */
export const mostActions = 1000;

/** Problems listed; the number of those left out is stated. */
export const maxProblems = 100;
