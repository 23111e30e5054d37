import type { Refusal } from '@fielded/core';
import { checkLogo, LOGO, type LogoPixels, NO_PICTURE, tooSteep } from '@fielded/exchange';
import type { Bitmap } from '@fielded/render';
import { Resvg } from '@resvg/resvg-js';
import { readLogo } from './read-logo.ts';

/**
 * The shop's logo as pixels, whatever it is drawn as: .png, .jpg and .svg are drawn anew, so that nothing but a picture reaches a
 * document. It must lie beside the shop file at `shopPath` or below.
 */
export function loadLogo(shopPath: string, name: string): Bitmap | Refusal {
  const bytes = readLogo(shopPath, name);
  if ('refused' in bytes) return bytes;
  const checked = checkLogo(bytes);
  if ('refused' in checked) return checked;
  try {
    return 'svg' in checked
      ? drawLogo(checked.svg, LOGO.drawnWidth)
      : drawLogo(aroundPicture(bytes, checked.pixels), Math.min(LOGO.drawnWidth, checked.pixels.width));
  } catch {
    return NO_PICTURE;
  }
}

function drawLogo(svg: string, width: number): Bitmap | Refusal {
  const picture = new Resvg(svg, { fitTo: { mode: 'width', value: width }, font: { loadSystemFonts: false } });
  const steep = tooSteep(picture.width, picture.height);
  if (steep !== null) return steep;
  const drawn = picture.render();
  return { png: new Uint8Array(drawn.asPng()), width: drawn.width, height: drawn.height };
}

function aroundPicture(bytes: Uint8Array, { type, width, height }: LogoPixels): string {
  const data = `data:image/${type};base64,${Buffer.from(bytes).toString('base64')}`;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}"><image width="${width}" height="${height}" href="${data}"/></svg>`;
}
