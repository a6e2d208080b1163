import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const CONFIG = fileURLToPath(new URL('../../src/page/vite.config.ts', import.meta.url));

/** Exit code of a process that was asked to end: 128 and the number of the signal. */
const TERMINATED = 143;

let built: Promise<string> | null = null;

/** Folder of the page as `npm run page` builds it; one build for all tests of a process, removed at its end. */
export function builtPage(): Promise<string> {
  built ??= buildPage();
  return built;
}

async function buildPage(): Promise<string> {
  const folder = mkdtempSync(path.join(tmpdir(), 'countertorque-page-'));
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  // vitest ends its processes by this signal, which by itself would leave the folder behind.
  process.once('SIGTERM', () => process.exit(TERMINATED));
  // Under vitest the build would take the variable for its own and leave the development helpers in.
  const { NODE_ENV } = process.env;
  process.env.NODE_ENV = 'production';
  try {
    await build({
      configFile: CONFIG,
      logLevel: 'warn',
      mode: 'production',
      build: { outDir: folder, emptyOutDir: true },
    });
  } finally {
    if (NODE_ENV === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = NODE_ENV;
  }
  return folder;
}

/** The policy that stands in the built page, for a server that sends it as a header too. */
export function policyOf(folder: string): string {
  const page = readFileSync(path.join(folder, 'index.html'), 'utf8');
  const policy = /http-equiv="Content-Security-Policy"\s+content="(?<policy>[^"]*)"/iu.exec(page)?.groups
    ?.policy;
  if (policy === undefined) throw new Error('index.html states no content security policy');
  return policy;
}
