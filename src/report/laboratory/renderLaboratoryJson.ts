import type { LaboratorySheet } from '../../survey/laboratory/laboratory.ts';

/** Version of the format below. Additions keep it; a change of meaning or a removal raises it. */
const LABORATORY_VERSION = 1;

/** What `lab --json` prints. All values are SI. */
export interface LaboratoryFile extends Omit<LaboratorySheet, 'scenario'> {
  readonly laboratoryVersion: typeof LABORATORY_VERSION;
  /** The program that made it. */
  readonly program: { readonly name: 'countertorque'; readonly version: string };
  readonly title: string;
}

/** The laboratory procedure as JSON text, ending in a line break. */
export function renderLaboratoryJson(
  sheet: LaboratorySheet,
  { version }: { readonly version: string },
): string {
  const { scenario, ...rest } = sheet;
  const file: LaboratoryFile = {
    laboratoryVersion: LABORATORY_VERSION,
    program: { name: 'countertorque', version },
    title: scenario.title,
    ...rest,
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}
