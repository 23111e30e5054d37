import type PDFDocument from 'pdfkit';
import type { Typeface, Typefaces } from '../letters/typefaces.ts';
import { loadPart } from '../load-part.ts';
import type { Scene } from '../scene.ts';

const POINTS_PER_MM = 72 / 25.4;
/** Written where the format insists on a time: files depend on what is drawn, not on when. */
const NO_TIME = new Date(0);

/** What a PDF says of itself beside its pages. */
export interface PdfInfo {
  /** By default the first page's. */
  readonly title?: string;
  readonly author?: string;
  readonly subject?: string;
  /** BCP 47 tag of the language of its words; by default `en`. */
  readonly language?: string;
}

/**
 * Drawings as a PDF, a page each at true size, always ink on white: lines and filled areas, letters as text of the fonts
 * given, parts of which are embedded. Tagged: for readers who cannot see it a page of words is read, and a drawing by its description;
 * PDF/A-2b (ISO 19005-2). The same bytes for the same drawings and fonts.
 *
 * Fonts are tried in order for each sign; those that draw nothing are left out.
 *
 * @throws RangeError without a font.
 */
export async function writePdf(
  scenes: readonly Scene[],
  typefaces: readonly Typeface[],
  info: PdfInfo = {},
): Promise<Uint8Array> {
  const [first, ...more] = typefaces;
  if (first === undefined) throw new RangeError('a PDF needs a font for its letters');
  // Loaded only where a PDF is written: both take longer to load than a drawing takes to make.
  const [{ default: Pdf }, { paintItems }] = await loadPart(() =>
    Promise.all([import('pdfkit'), import('./paint-scene.ts')]),
  );
  const language = info.language ?? 'en';
  const document = new Pdf({
    autoFirstPage: false,
    // Its own standard letters are not wanted: the fonts are registered below.
    font: null,
    lang: language,
    displayTitle: true,
    pdfVersion: '1.7',
    subset: 'PDF/A-2b',
    tagged: true,
    info: {
      Title: info.title ?? scenes[0]?.title ?? '',
      ...(info.author && { Author: info.author }),
      ...(info.subject && { Subject: info.subject }),
      Producer: 'fielded',
      Creator: 'fielded',
      CreationDate: NO_TIME,
    },
  });
  for (const { name, embedded } of typefaces) document.registerFont(name, embedded());
  const finished = collect(document);
  const whole = document.struct('Document', { lang: language });
  document.addStructure(whole);
  for (const scene of scenes) addScene(document, whole, scene, [first, ...more], paintItems);
  whole.end();
  document.end();
  return finished;
}

type Document = InstanceType<typeof PDFDocument>;

function addScene(
  document: Document,
  whole: ReturnType<Document['struct']>,
  scene: Scene,
  typefaces: Typefaces,
  paint: typeof import('./paint-scene.ts').paintItems,
): void {
  document.addPage({ size: [scene.width * POINTS_PER_MM, scene.height * POINTS_PER_MM], margin: 0 });
  document.scale(POINTS_PER_MM).lineJoin('round');
  const painted = () => paint(document, scene.items, typefaces);
  // A drawing is read out by its description, a page of words by its words.
  const part =
    scene.reads === 'words'
      ? document.struct('P', {}, painted)
      : document.struct('Figure', { alt: scene.description || scene.title }, painted);
  whole.add(part);
  part.end();
}

/** What a document writes, as one piece. */
function collect(document: Document): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    document.on('data', (chunk) => chunks.push(chunk));
    document.on('error', reject);
    document.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
      let at = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, at);
        at += chunk.length;
      }
      resolve(bytes);
    });
  });
}
