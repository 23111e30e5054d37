/** The bytes of a data URL in base 64; null for any other text. */
export function bytesOfAddress(text: string): Uint8Array | null {
  const packed = /^data:[^,]*;base64,([A-Za-z0-9+/=]*)$/.exec(text)?.[1];
  return packed === undefined ? null : Uint8Array.from(atob(packed), (letter) => letter.charCodeAt(0));
}
