import { openTypefaces, type Scene, writePdf } from '@fielded/render';
import fontUrl from '@fielded/render/fonts/IBMPlexSans-Regular.ttf?url';

/** Drawings as a PDF at true size, a page each, with the font in it. */
export async function scenesPdf(scenes: readonly Scene[]): Promise<Blob> {
  const font = new Uint8Array(await (await fetch(fontUrl)).arrayBuffer());
  const bytes = await writePdf(scenes, await openTypefaces([font]));
  return new Blob([bytes as BlobPart], { type: 'application/pdf' });
}
