import * as render from '@fielded/render';
import { type Fonts, openFonts } from './fonts.ts';

/** Drawings as a PDF at true size, a page each; `fonts` are looked for unless given. See `writePdf` of the drawing package. */
export async function writePdf(
  scenes: readonly render.Scene[],
  options: render.PdfInfo & { readonly fonts?: Fonts } = {},
): Promise<Uint8Array> {
  const { fonts = await openFonts(scenes), ...info } = options;
  return render.writePdf(scenes, fonts.typefaces, info);
}
