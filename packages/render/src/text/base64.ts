const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes in base 64, RFC 4648; this package knows neither Node's Buffer nor a browser's btoa. */
export function base64(bytes: Uint8Array): string {
  let out = '';
  for (let i = 0; i < bytes.length; i += 3) {
    const word = (bytes[i]! << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0);
    out += LETTERS[word >> 18]! + LETTERS[(word >> 12) & 63]!;
    out += i + 1 < bytes.length ? LETTERS[(word >> 6) & 63]! : '=';
    out += i + 2 < bytes.length ? LETTERS[word & 63]! : '=';
  }
  return out;
}
