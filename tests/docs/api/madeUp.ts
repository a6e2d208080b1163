import { writeFileSync } from 'node:fs';
import path from 'node:path';
import type { TypeDocOptions } from 'typedoc';
import { type Api, readApi } from './readApi.ts';
import { API_SETTINGS, PROJECT_FOLDER } from './settings.ts';

/** A module in which nothing is missing, with all that its pages could lead away from this computer by. */
export const COMPLETE = `
/**
 * Mean of forces. Source: arithmetic.
 *
 * @param forces one per leg, N
 * @returns N
 * @throws RangeError where there is none
 */
export function mean(forces: readonly number[]): number {
  if (forces.length === 0) throw new RangeError('none');
  return forces[0]!;
}

/** A table; all forces in N. */
export interface Table {
  readonly title: string;
  readonly legCount: number;
  /** On the top. */
  readonly load: number;
  /** Whose it is. */
  readonly owner: { readonly name: string } | null;
  /** One per leg, in the order of the legs. */
  readonly forces: Float64Array;
}

/** A table that does not stand. */
export class WobbleError extends Error {}

/** Reads a force, N. */
export type Reading = (leg: Table) => number;

/** Reads all and never throws: what is thrown is caught. */
export function calm(): void {
  try { mean([]); } catch {}
}
`;

/**
 * Reads made-up modules, with the settings of the real documentation but for its pages by hand.
 *
 * @param folder empty; the modules are written into it
 * @param modules text by name
 */
export async function readMadeUp(folder: string, modules: Readonly<Record<string, string>>): Promise<Api> {
  const write = (name: string, text: string) => {
    const file = path.join(folder, name);
    writeFileSync(file, `${text}\n`);
    return file;
  };
  const entryPoints = Object.entries(modules).map(([name, text]) => write(`${name}.ts`, text));
  write('package.json', JSON.stringify({ name: 'made-up', version: '1.0.0' }));
  const compilerOptions = {
    target: 'es2022',
    lib: ['es2022'],
    strict: true,
    noEmit: true,
    // As the project: what these types say of errors holds addresses of the network.
    types: ['node'],
    typeRoots: [path.join(PROJECT_FOLDER, 'node_modules/@types')],
  };
  const tsconfig = write('tsconfig.json', JSON.stringify({ compilerOptions, files: entryPoints }));
  const settings: TypeDocOptions = { ...API_SETTINGS, entryPoints, tsconfig, readme: 'none' };
  return readApi(settings);
}
