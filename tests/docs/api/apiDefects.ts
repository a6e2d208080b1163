import { linkDefects } from './linkDefects.ts';
import type { Api } from './readApi.ts';
import { throwDefects } from './throwDefects.ts';
import { wordDefects } from './wordDefects.ts';

/**
 * Everything that a reader of the public names would miss, a line each: words, units, the layout of arrays, errors that are thrown, types
 * that are used without being exported, links that lead nowhere or to the network.
 */
export function apiDefects(api: Api): string[] {
  return [...api.warnings, ...wordDefects(api.project), ...throwDefects(api), ...linkDefects(api.project)];
}
