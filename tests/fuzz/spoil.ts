import type { Random } from '../support/random.ts';

/** Bytes spoilt by chance, one to four times: changed, cut out, repeated, or with one of `pieces` put in. */
export function spoil(bytes: Uint8Array, random: Random, pieces: readonly string[]): Uint8Array {
  const spoilt = [...bytes];
  const times = 1 + Math.floor(random.unit() * 4);
  for (let i = 0; i < times; i++) {
    const at = Math.floor(random.unit() * spoilt.length);
    const kind = random.unit();
    if (kind < 0.3) spoilt[at] = Math.floor(random.unit() * 256);
    else if (kind < 0.5) spoilt.splice(at, 1 + Math.floor(random.unit() * 8));
    else if (kind < 0.7) spoilt.splice(at, 0, ...new TextEncoder().encode(random.oneOf(pieces)));
    else if (kind < 0.85) spoilt.splice(at, 0, ...spoilt.slice(at, at + Math.floor(random.unit() * 60)));
    else spoilt[at] = spoilt[at]! ^ (1 << Math.floor(random.unit() * 8));
  }
  return Uint8Array.from(spoilt);
}
