import type { InterlockReport } from '../starter/interlocks/checkInterlocks.ts';
import { PROPERTIES, type Property } from '../starter/interlocks/property.ts';
import { ASSUMPTIONS } from './interlocksTable.ts';

/** Version of the format below. Additions keep it; a change of meaning or a removal raises it. */
const INTERLOCKS_VERSION = 1;

/** What `interlocks --json` prints. */
export interface InterlocksFile {
  readonly interlocksVersion: typeof INTERLOCKS_VERSION;
  /** The program that made it. */
  readonly program: { readonly name: 'countertorque'; readonly version: string };
  /** The properties in words. */
  readonly properties: readonly Property[];
  /** What the check takes for granted. */
  readonly assumptions: readonly string[];
  /** One for each starter. */
  readonly starters: readonly InterlockReport[];
}

/** The exhaustive check as JSON text, ending in a line break. */
export function renderInterlocksJson(
  reports: readonly InterlockReport[],
  { version }: { readonly version: string },
): string {
  const file: InterlocksFile = {
    interlocksVersion: INTERLOCKS_VERSION,
    program: { name: 'countertorque', version },
    properties: PROPERTIES,
    assumptions: ASSUMPTIONS,
    starters: reports,
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}
