/**
 * Builds the page and serves it on this computer only, until it is interrupted.
 *
 *     npm run page -- --port 4173
 */
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build, preview } from 'vite';

/** Where to look first; the next free port is taken when something else is there. */
const USUAL_PORT = 4173;
const HOST = '127.0.0.1';
const LARGEST_PORT = 65_535;

const configFile = fileURLToPath(new URL('../vite.config.ts', import.meta.url));

function portOf(stated: string | undefined): number {
  if (stated === undefined) return USUAL_PORT;
  const port = Number(stated);
  if (Number.isInteger(port) && port > 0 && port <= LARGEST_PORT) return port;
  throw new Error(`--port is ${stated}; expected a whole number from 1 to ${LARGEST_PORT}`);
}

async function servePage(): Promise<void> {
  const { values } = parseArgs({ options: { port: { type: 'string' } } });
  const port = portOf(values.port);
  await build({ configFile, logLevel: 'warn' });
  const server = await preview({ configFile, logLevel: 'warn', preview: { host: HOST, port } });
  const address = server.resolvedUrls?.local[0];
  console.log(`The page is at ${address} (stop with Ctrl+C)`);
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.once(signal, () => {
      server.close().finally(() => process.exit(0));
    });
}

servePage().catch((error: unknown) => {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
});
