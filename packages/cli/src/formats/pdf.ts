/// <reference path="./untyped-libraries.d.ts" />
import type { Scene } from '@fielded/render';
import { sceneToSvg } from '@fielded/render';
import PDFDocument from 'pdfkit';
import svgToPdf from 'svg-to-pdfkit';
import { FONT_FILE, FONT_NAME } from './font-file.ts';

const POINTS_PER_MM = 72 / 25.4;
/** Written where the library insists on a time: files depend on what is drawn, not on when. */
const NO_TIME = new Date(0);

/** Drawings as a PDF at true size, a page each, always ink on white, the font embedded. The same bytes for the same drawings. */
export function writePdf(scenes: readonly Scene[]): Promise<Uint8Array> {
  const document = new PDFDocument({
    autoFirstPage: false,
    compress: true,
    lang: 'en',
    displayTitle: true,
    info: { Title: scenes[0]?.title ?? '', Producer: 'fielded', Creator: 'fielded', CreationDate: NO_TIME },
  });
  document.registerFont(FONT_NAME, FONT_FILE);
  const chunks: Uint8Array[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    document.on('data', (chunk) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
    document.on('error', reject);
  });
  for (const scene of scenes) {
    const width = scene.width * POINTS_PER_MM;
    const height = scene.height * POINTS_PER_MM;
    document.addPage({ size: [width, height], margin: 0 });
    svgToPdf(document, sceneToSvg(scene, { bare: true }), 0, 0, {
      width,
      height,
      fontCallback: () => FONT_NAME,
      warningCallback: (message) => {
        throw new Error(`PDF: ${message}`);
      },
    });
  }
  document.end();
  return done;
}
