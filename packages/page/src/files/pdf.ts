import { openTypefaces, type PdfInfo, type Scene, type Typeface, writePdf } from '@fielded/render';
import fontUrl from '@fielded/render/fonts/IBMPlexSans-Regular.ttf?url';
import { fetchPart } from '../desk/fetch-part.ts';

/** Fetches the font that drawings are lettered in. */
export async function openFont(): Promise<Typeface[]> {
  return openTypefaces([await fetchPart(fetchFont)]);
}

async function fetchFont(): Promise<Uint8Array> {
  const answer = await fetch(fontUrl);
  if (!answer.ok) throw new Error(answer.statusText);
  return new Uint8Array(await answer.arrayBuffer());
}

/** Drawings as a PDF at true size, a page each, with the font in it. */
export async function scenesPdf(scenes: readonly Scene[], info: PdfInfo = {}): Promise<Blob> {
  const bytes = await writePdf(scenes, await openFont(), info);
  return new Blob([bytes as BlobPart], { type: 'application/pdf' });
}
