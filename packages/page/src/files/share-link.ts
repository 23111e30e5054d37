import type { Doc, ShopDoc } from '../desk/doc.ts';
import type { Data } from '../job/data.ts';

const KEY = 'job=';
/** The largest job in a link, bytes unpacked. */
const MOST_UNPACKED = 1_000_000;
/** The longest link that is followed, characters. */
export const MOST_LINK = 400_000;

/** The address of this page with the whole job behind the #, which browsers send to no one. */
export async function shareLink(doc: Doc, address: string): Promise<string> {
  const { data, shop, fileName } = doc;
  const text = JSON.stringify({ data, fileName, ...(shop && { shop: { name: shop.name, data: shop.data } }) });
  const packed = await pass(
    new TextEncoder().encode(text),
    new CompressionStream('deflate-raw'),
    Number.POSITIVE_INFINITY,
  );
  return `${address.replace(/#.*$/, '')}#${KEY}${toBase64(packed)}`;
}

/** The job in an address; null where there is none, a message where it cannot be followed. */
export async function readLink(hash: string): Promise<{ doc: Doc } | { message: string } | null> {
  const packed = hash.replace(/^#/, '');
  if (!packed.startsWith(KEY)) return null;
  const broken = { message: 'The link does not hold a whole job: it may have been cut short. Your job is as it was.' };
  if (packed.length > MOST_LINK) return { message: 'The link is too long to hold a job. Your job is as it was.' };
  try {
    const bytes = await pass(
      fromBase64(packed.slice(KEY.length)),
      new DecompressionStream('deflate-raw'),
      MOST_UNPACKED,
    );
    const held = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes)) as Record<string, unknown>;
    if (typeof held !== 'object' || held === null || !('data' in held)) return broken;
    const shop = held.shop as { name?: unknown; data?: unknown } | undefined;
    const shopDoc: ShopDoc | null =
      shop === undefined ? null : { name: String(shop.name), data: shop.data as Data, text: '' };
    const fileName = typeof held.fileName === 'string' ? held.fileName.slice(0, 100) : 'job.yaml';
    return { doc: { data: held.data as Data, source: null, fileName, shop: shopDoc } };
  } catch {
    return broken;
  }
}

/** Passes bytes through a stream. Rejects with RangeError where more than `most` bytes come out. */
async function pass(bytes: Uint8Array, through: GenericTransformStream, most: number): Promise<Uint8Array> {
  const stream = new Blob([bytes as BlobPart])
    .stream()
    .pipeThrough(through as ReadableWritablePair<Uint8Array, Uint8Array>);
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = stream.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    // A small link can unpack to any size: stop while it does.
    if (length > most) {
      await reader.cancel();
      throw new RangeError('too large');
    }
    parts.push(value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let i = 0; i < bytes.length; i += 0x8000) text += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
  return btoa(text).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function fromBase64(text: string): Uint8Array {
  return Uint8Array.from(atob(text.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0));
}
