// A registry on this machine that holds packs made of this workspace, so that npm installs them as it does what is published.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';

/** A pack, and the package.json that is in it. */
export interface Published {
  readonly tarball: string;
  readonly manifest: { readonly name: string; readonly version: string };
}

/**
 * Starts a registry of these packs on a free port. It knows nothing else and lets nobody keep an answer, so that no cache of
 * whoever runs the tests is filled with them. Packs given to npm as files are each unpacked twice, which takes twice as long.
 */
export async function startRegistry(
  folder: string,
  packs: readonly Published[],
): Promise<{ url: string; server: Server }> {
  const server = createServer((request, response) => {
    response.setHeader('cache-control', 'no-store');
    const asked = decodeURIComponent(request.url ?? '').slice(1);
    const file = packs.find(({ tarball }) => tarball === asked);
    if (file !== undefined) return response.end(readFileSync(join(folder, file.tarball)));
    const pack = packs.find(({ manifest }) => manifest.name === asked);
    if (pack === undefined) return response.writeHead(404).end('{}');
    response.setHeader('content-type', 'application/json');
    return response.end(JSON.stringify(describePack(folder, pack, url)));
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`;
  return { url, server };
}

/** What a registry tells of a package that has one version. */
function describePack(folder: string, { tarball, manifest }: Published, url: string): object {
  const integrity = `sha512-${createHash('sha512')
    .update(readFileSync(join(folder, tarball)))
    .digest('base64')}`;
  const { name, version } = manifest;
  const versions = { [version]: { ...manifest, dist: { tarball: url + tarball, integrity } } };
  return { name, 'dist-tags': { latest: version }, versions };
}
