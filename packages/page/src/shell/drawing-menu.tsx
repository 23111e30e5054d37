import type { PaperName } from '@fielded/render';
import { useSignal } from '@preact/signals';
import type { JSX } from 'preact';
import { useDesk } from '../desk/context.ts';
import type { Desk } from '../desk/desk.ts';
import { attempt, fetchPart } from '../desk/fetch-part.ts';
import { fileName, handOver } from '../files/hand-over.ts';
import { paintSvg } from '../files/paint-svg.ts';
import { PAPER_NAMES, printPages } from '../files/print-pages.ts';
import { usualPaper } from '../files/usual-paper.ts';
import { nameOf, type ViewName } from '../stage/view-scene.ts';
import { adoptStyles } from '../style/adopt-styles.ts';
import menuStyles from '../style/menu-lists.css?inline';

adoptStyles(menuStyles);

/** What a file is named for, by its ending, where that is not the view shown. */
const WHAT: Readonly<Record<string, string>> = { dxf: 'outlines', pdf: 'sheets' };

type Drawings = typeof import('../files/drawings.ts');

const fetchDrawings = (): Promise<Drawings> => fetchPart(() => import('../files/drawings.ts'));

/** The drawing on paper, as a file, or copied. */
export function DrawingMenu({ view }: { view: ViewName }): JSX.Element {
  const desk = useDesk();
  const paper = useSignal<PaperName>(usualPaper());
  const give = (ending: string, type: string, make: (drawings: Drawings) => BlobPart | Promise<BlobPart>) =>
    attempt(desk, async () => {
      const name = fileName(`${desk.job.value.title} ${WHAT[ending] ?? nameOf(view, desk.report.value)}`, ending);
      handOver(name, await make(await fetchDrawings()), type);
      desk.notice.value = { kind: 'note', text: `Saved as ${name}.` };
    });
  return (
    <>
      <div class="paper">
        <label for="paper">Paper</label>
        <select
          id="paper"
          value={paper.value}
          onChange={(event) => {
            paper.value = event.currentTarget.value as PaperName;
          }}
        >
          {PAPER_NAMES.map(([name, word]) => (
            <option key={name} value={name}>
              {word}
            </option>
          ))}
        </select>
      </div>
      <button type="button" onClick={() => printSheets(desk, paper.value)}>
        Print at full size
      </button>
      <button
        type="button"
        onClick={() => give('pdf', 'application/pdf', ({ benchPdf }) => benchPdf(desk.report.value, paper.value))}
      >
        Full-size sheets as PDF
      </button>
      <button
        type="button"
        onClick={() => give('svg', 'image/svg+xml', ({ drawingSvg }) => drawingSvg(desk.report.value, view))}
      >
        This drawing as SVG
      </button>
      <button
        type="button"
        onClick={() => give('dxf', 'image/vnd.dxf', ({ outlinesDxf }) => outlinesDxf(desk.report.value))}
      >
        Outlines as DXF
      </button>
      <button type="button" onClick={() => copyDrawing(desk, view)}>
        Copy the drawing
      </button>
    </>
  );
}

/** The sheets for the bench at full size, to the printer. */
async function printSheets(desk: Desk, paper: PaperName): Promise<void> {
  await attempt(desk, async () => printPages((await fetchDrawings()).benchSheets(desk.report.peek(), paper), paper));
}

/** A copied picture's pixels to the inch. */
const DPI = 300;

/** The drawing as SVG text and as a picture, for a document to take whichever it can. */
async function copyDrawing(desk: Desk, view: ViewName): Promise<void> {
  const copy = async () => {
    const svg = (await fetchDrawings()).drawingSvg(desk.report.value, view);
    const picture = await paintSvg(svg, DPI);
    await navigator.clipboard.write([
      new ClipboardItem({ 'image/png': picture, 'text/plain': new Blob([svg], { type: 'text/plain' }) }),
    ]);
    desk.notice.value = { kind: 'note', text: 'The drawing is copied, as a picture and as SVG.' };
  };
  await attempt(desk, copy, { fault: () => 'This browser will not copy a drawing. Save it as SVG instead.' });
}
