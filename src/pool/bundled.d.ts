/**
 * Loads a module of this package, with all that it imports, from one file of JavaScript.
 *
 * @param source path below `src`, such as `cli/main.ts`
 * @returns the module; what is in it, the caller knows
 */
export function bundled(source: string): Promise<unknown>;

/**
 * @param source path below `src`, such as `index.ts`
 * @returns path of the one file of that module, which is made if it is not there
 */
export function bundleFile(source: string): Promise<string>;
