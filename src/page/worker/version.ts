declare const PROGRAM_VERSION: string;

/** Version of the program; the build puts in that of package.json. */
export const VERSION: string = PROGRAM_VERSION;
