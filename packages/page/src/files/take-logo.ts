import { type KeptLogo, keepLogo } from '../desk/kept-logos.ts';
import { drawLogo } from './logo-picture.ts';

/** Draws a logo's file and keeps it in this browser. Returns its id, or what is wrong with it, in a sentence. */
export async function takeLogo(
  name: string,
  bytes: Uint8Array,
): Promise<{ readonly id: string } | { readonly fault: string }> {
  const drawn = await drawLogo(bytes);
  if ('refused' in drawn) return { fault: `${name}: ${drawn.refused}. ${drawn.instead}.` };
  const { width, height } = await createImageBitmap(drawn);
  return { id: keepLogo({ png: await addressOf(drawn), width, height } satisfies KeptLogo) };
}

function addressOf(blob: Blob): Promise<string> {
  return new Promise((settle, fail) => {
    const reader = new FileReader();
    reader.onload = () => settle(String(reader.result));
    reader.onerror = () => fail(reader.error);
    reader.readAsDataURL(blob);
  });
}
