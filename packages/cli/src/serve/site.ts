import { readFileSync, statSync } from 'node:fs';
import { extname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

/** A file of the page as it goes out. */
export interface SiteFile {
  readonly body: Buffer;
  readonly headers: Readonly<Record<string, string>>;
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.woff2': 'font/woff2',
  '.ttf': 'font/ttf',
  '.icc': 'application/vnd.iccprofile',
  '.txt': 'text/plain; charset=utf-8',
};
const TEXT = /^(?:text|application\/(?:json|manifest)|image\/svg)/;

/** Where the built page lies; null where it has not been built. */
export function findSite(): string | null {
  try {
    return fileURLToPath(new URL('.', import.meta.resolve('@fielded/page/site/index.html')));
  } catch {
    return null;
  }
}

/** Cache of compressed files by path and time of writing: compressing one for every request would block all others. */
export type SiteCache = Map<string, { readonly written: number; readonly file: SiteFile }>;

/**
 * The file of the page at a path of its address, packed for the way; null where there is none.
 *
 * Nothing outside the folder can be asked for, whatever the path. Files with a hash in their name never change.
 */
export function readSite(folder: string, path: string, cache: SiteCache): SiteFile | null {
  const name = path === '/' ? 'index.html' : safePath(path);
  const type = name === null ? undefined : TYPES[extname(name)];
  if (name === null || type === undefined) return null;
  try {
    const path = join(folder, name);
    const found = statSync(path);
    if (!found.isFile()) return null;
    const kept = cache.get(path);
    if (kept?.written === found.mtimeMs) return kept.file;
    const file = pack(readFileSync(path), name, type);
    cache.set(path, { written: found.mtimeMs, file });
    return file;
  } catch {
    return null;
  }
}

function pack(plain: Buffer, name: string, type: string): SiteFile {
  const headers = {
    'content-type': type,
    'cache-control': name.startsWith('assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
  };
  return TEXT.test(type)
    ? { body: gzipSync(plain), headers: { ...headers, 'content-encoding': 'gzip' } }
    : { body: plain, headers };
}

function safePath(path: string): string | null {
  let plain: string;
  try {
    plain = decodeURIComponent(path);
  } catch {
    return null;
  }
  const parts = plain.split('/').filter((part) => part !== '');
  const odd = parts.some(
    (part) => part.startsWith('.') || part.includes('\\') || part.includes('\0') || part.includes(sep),
  );
  return odd || parts.length === 0 ? null : parts.join('/');
}
