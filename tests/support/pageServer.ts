import { createReadStream, statSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import path from 'node:path';

/** A folder served on this computer, and what was asked of it. */
export interface PageServer {
  /** Address of the folder, with its slash at the end. */
  readonly address: string;
  /** Paths below the folder that were asked for, in order, the page itself as ''. */
  readonly asked: readonly string[];
  /** What was asked for and not there, or outside the folder. */
  readonly missing: readonly string[];
  /** Ends every connection and stops listening. */
  close(): Promise<void>;
}

/** Where on the server the folder is put. */
export interface PageServerOptions {
  /** Path with a slash at both ends. */
  readonly under: string;
  /** Sent with every file. */
  readonly headers: Readonly<Record<string, string>>;
}

/** Types by the ending of a name; a file of another kind is refused, so that a test tells of it. */
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.webmanifest': 'application/manifest+json',
};

/**
 * Serves a folder the way the plainest web server does: files with their types and nothing else, below a path that the
 * page cannot know. `nosniff` makes a wrong type an error in the browser.
 */
export async function pageServer(
  folder: string,
  { under = '/some/where/', headers = {} }: Partial<PageServerOptions> = {},
): Promise<PageServer> {
  const asked: string[] = [];
  const missing: string[] = [];
  const server = createServer((request, response) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    const below = pathname.startsWith(under) ? decodeURIComponent(pathname.slice(under.length)) : null;
    asked.push(below ?? pathname);
    const file = path.join(folder, below === '' ? 'index.html' : (below ?? ''));
    const type = TYPES[path.extname(file)];
    const inside = below !== null && file.startsWith(path.join(folder, path.sep));
    if (!inside || type === undefined || statSync(file, { throwIfNoEntry: false })?.isFile() !== true) {
      missing.push(pathname);
      response.writeHead(404, { 'content-type': 'text/plain' }).end('not found');
      return;
    }
    response.writeHead(200, {
      'content-type': type,
      'x-content-type-options': 'nosniff',
      // Names of assets hold a hash of what is in them: any server may let them be kept.
      'cache-control': below?.startsWith('assets/') ? 'max-age=3600, immutable' : 'no-cache',
      ...headers,
    });
    createReadStream(file).pipe(response);
  });
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}${under}`,
    asked,
    missing,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
