import { createServer, type IncomingMessage, type Server } from 'node:http';
import { readSite, type SiteCache } from './site.ts';

/** A file to lay on the page's desk when it opens. */
export interface GivenFile {
  readonly name: string;
  readonly text: string;
}

/** A page being served. */
export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

const HOST = '127.0.0.1';

/** The connection of a client that is idle for this long is closed, ms. */
const PATIENCE = 20_000;
/** More connections than a browser with many tabs opens; those past them are closed at once. */
const MOST_CONNECTIONS = 1000;

/** Headers of every answer: nothing from elsewhere is loaded, nothing is framed, nothing is sent on. */
const HEADERS: Readonly<Record<string, string>> = {
  // The page's worker tells by this header that the port serves this page and no other program's.
  server: 'fielded',
  'content-security-policy':
    "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self' data:; img-src 'self' data: blob:; " +
    "connect-src 'self' data: blob:; worker-src 'self' blob:; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

/**
 * Serves the page in `folder` on the loopback address alone, at a port of its own or the one given.
 *
 * `files` gives the job that the page asks for, read anew each time; none, for null. A request that names another host
 * is refused, so that no web site can reach it under a name of its own. Rejects where the port is taken.
 */
export function servePage(folder: string, files: (() => readonly GivenFile[]) | null, port = 0): Promise<Served> {
  const site: SiteCache = new Map();
  const server = createServer((request, response) => {
    const { status, headers, body } = reply({ folder, files, site, port: portOf(server) }, request);
    response.writeHead(status, { ...HEADERS, ...headers });
    response.end(request.method === 'HEAD' ? undefined : body);
  });
  server.maxConnections = MOST_CONNECTIONS;
  server.headersTimeout = PATIENCE;
  server.requestTimeout = PATIENCE;
  server.setTimeout(PATIENCE);
  return new Promise((settle, fail) => {
    server.once('error', fail);
    server.listen(port, HOST, () =>
      settle({
        address: `http://${HOST}:${portOf(server)}/`,
        close: () =>
          new Promise((done) => {
            server.close(() => done());
            server.closeAllConnections();
          }),
      }),
    );
  });
}

function portOf(server: Server): number {
  const address = server.address();
  return typeof address === 'object' && address !== null ? address.port : 0;
}

interface Reply {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string | Buffer;
}

/** What is served, and where. */
interface Serving {
  readonly folder: string;
  readonly files: (() => readonly GivenFile[]) | null;
  readonly site: SiteCache;
  readonly port: number;
}

function reply({ folder, files, site, port }: Serving, { method, url = '/', headers }: IncomingMessage): Reply {
  const refuse = (status: number, body: string): Reply => ({
    status,
    headers: { 'content-type': 'text/plain; charset=utf-8' },
    body,
  });
  if (![`${HOST}:${port}`, `localhost:${port}`].includes(headers.host ?? ''))
    return refuse(421, 'This page is served to this machine only.\n');
  if (method !== 'GET' && method !== 'HEAD') return refuse(405, 'Only reading is possible here.\n');
  const path = url.replace(/[?#].*$/, '');
  if (path === '/job.json' && files !== null) {
    const kind = { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store' };
    return { status: 200, headers: kind, body: JSON.stringify(files()) };
  }
  const file = readSite(folder, path, site);
  return file === null ? refuse(404, 'There is no such file.\n') : { status: 200, ...file };
}
