import fontUrl from 'plex-sans.ttf?url';
import { type Scene, sceneToSvg } from '@fielded/render';
import PDFDocument from 'pdfkit';
import svgToPdf from 'svg-to-pdfkit';

const POINTS_PER_MM = 72 / 25.4;
const FONT = 'sans';

/** Drawings as a PDF at true size, a page each, with the font in it. */
export async function writePdf(scenes: readonly Scene[]): Promise<Blob> {
  const font = await (await fetch(fontUrl)).arrayBuffer();
  const document = new PDFDocument({
    autoFirstPage: false,
    // Its own standard letters are not fetched: the drawing's are registered below.
    font: null,
    lang: 'en',
    displayTitle: true,
    info: { Title: scenes[0]?.title ?? '', Producer: 'fielded', Creator: 'fielded' },
  });
  document.registerFont(FONT, font);
  const parts: BlobPart[] = [];
  const done = new Promise<Blob>((settle, fail) => {
    document.on('data', (part: BlobPart) => parts.push(part));
    document.on('end', () => settle(new Blob(parts, { type: 'application/pdf' })));
    document.on('error', fail);
  });
  for (const scene of scenes) {
    const size: [number, number] = [scene.width * POINTS_PER_MM, scene.height * POINTS_PER_MM];
    document.addPage({ size, margin: 0 });
    svgToPdf(document, sceneToSvg(scene, { bare: true }), 0, 0, {
      width: size[0],
      height: size[1],
      fontCallback: () => FONT,
    });
  }
  document.end();
  return done;
}
