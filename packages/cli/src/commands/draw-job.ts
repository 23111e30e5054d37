import { evaluate, findNearest, ONE_JOINT, type Report } from '@fielded/core';
import type {
  BlockFields,
  LaidSheets,
  OutlineView,
  PaperName,
  PlainView,
  Scene,
  Theme,
  UnitsChoice,
} from '@fielded/render';
import { explainFailure, readTextFile } from '../files/read-text.ts';
import type { Fonts } from '../formats/fonts.ts';
import type { Io } from '../io.ts';
import { remarkProblems } from '../report/list-problems.ts';
import { didYouMean, inEnglish, UsageError, unsaid } from '../usage-error.ts';
import { say, voiceOf } from '../words/say.ts';
import { deliver } from './deliver.ts';
import { type Chart, drawChart, isChart } from './draw-charts.ts';
import { exitStatus, openShop, readOneJob } from './read-jobs.ts';

export type DrawFormat = '.svg' | '.pdf' | '.png' | '.html' | '.dxf';

/** The least that --dpi may be. */
export const LEAST_DPI = 36;

/** What `fielded draw` was asked for. */
export interface DrawRequest {
  readonly path: string;
  readonly shop: string | undefined;
  readonly output: string | undefined;
  readonly format: DrawFormat;
  readonly view: PlainView | 'sheet' | Chart;
  readonly door: string | undefined;
  /** undefined: the view's usual scale. */
  readonly scale: number | 'fit' | undefined;
  readonly units: UnitsChoice | undefined;
  /** null: no paper, the drawing's own size. */
  readonly paper: PaperName | null;
  readonly landscape: boolean;
  /** Which sheet, from 1; undefined: the first, or all where the format holds several. */
  readonly sheet: number | undefined;
  /** How wide a drawing without paper is, mm. */
  readonly width: number | undefined;
  readonly checkBar: boolean;
  /** What stands in the title block. */
  readonly fields: BlockFields;
  readonly theme: Theme;
  readonly bare: boolean;
  readonly outlines: boolean;
  /** A font file for the letters that the shipped one lacks. */
  readonly font: string | undefined;
  readonly dpi: number;
  /** Whether a file that this tool did not write may be replaced. */
  readonly force: boolean;
}

/** A drawing of one job, to a file or as SVG to standard output; its problems on standard error. Gives the exit status. */
export async function drawJob(request: DrawRequest, io: Io): Promise<number> {
  const shop = await openShop(request.shop, io);
  if (shop === null) return 2;
  const job = await readOneJob({ path: request.path, text: readTextFile(request.path) }, shop, io);
  if (job === null) return 2;
  // Only the chart of the spread shows what many joints come to.
  const report = evaluate(job, request.view === 'spread' ? {} : { simulation: ONE_JOINT });

  if (request.format === '.dxf') {
    if (!(await deliver(io, request.output, await writeOutlines(report, request), request.force))) return 2;
    return finish(report, io);
  }
  const laid = await laySheetsOf(report, request, job.shop?.maker?.name);
  const chosen = chooseSheets(laid, request);
  const written = await writeScenes(chosen, request, io);
  if (!(await deliver(io, request.output, written, request.force))) return 2;
  if (chosen.length < laid.count && request.sheet === undefined)
    await io.err(`${say('print.first-sheet', { count: laid.count }, voiceOf(io))}\n`);
  return finish(report, io);
}

/** What is wrong with the job, on standard error. */
async function finish(report: Report, io: Io): Promise<number> {
  await io.err(remarkProblems(report.problems, voiceOf(io)));
  return exitStatus(report);
}

/** The view's outlines at 1:1, on named layers. */
async function writeOutlines(report: Report, request: DrawRequest): Promise<string> {
  const { outlineLayers } = await import('@fielded/render');
  const { writeDxf } = await import('@fielded/exchange');
  return writeDxf(outlineLayers(report, request.view as OutlineView, findDoor(report, request) ?? 0));
}

/** The drawing part is loaded only when something is drawn: checking starts faster without it. */
async function laySheetsOf(report: Report, request: DrawRequest, maker: string | undefined): Promise<LaidSheets> {
  if (isChart(request.view)) return only(await drawChart(report, request.view));
  const { scene, laySheets } = await import('@fielded/render');
  const door = findDoor(report, request);
  const { view, paper, scale, units, bare, landscape, fields, width, checkBar } = request;
  const common = { bare, ...(door !== undefined && { door }), ...(units && { units }) };
  return saysUsage(() => {
    if (paper !== null)
      return laySheets(report, {
        ...common,
        ...fields,
        ...(maker !== undefined && { shop: maker }),
        view,
        paper,
        landscape,
        ...(scale && { scale }),
      });
    if (view === 'sheet' || scale === 'fit') throw new Error('these need paper, which reading them made sure of');
    return only(
      scene(report, { ...common, view, checkBar, ...(scale && { scale }), ...(width !== undefined && { width }) }),
    );
  });
}

function only(scene: Scene): LaidSheets {
  return { count: 1, draw: () => scene };
}

/** What a drawing refuses, such as a scale that does not fit the paper, is wrong use. */
function saysUsage<T>(draw: () => T): T {
  try {
    return draw();
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(inEnglish(error.message));
    throw error;
  }
}

/** The sheets that the file is to hold, drawn. */
function chooseSheets({ count, draw }: LaidSheets, { sheet, format }: DrawRequest): Scene[] {
  if (sheet !== undefined && sheet > count)
    throw new UsageError(
      unsaid(count === 1 ? 'print.usage.sheet.one' : 'print.usage.sheet', { sheet: String(sheet), count }),
    );
  const all = format === '.pdf' || format === '.html';
  const wanted = sheet !== undefined ? [sheet - 1] : Array.from({ length: all ? count : 1 }, (_, i) => i);
  return saysUsage(() => wanted.map(draw));
}

/** Each format is loaded only when it is written. */
async function writeScenes(scenes: readonly Scene[], request: DrawRequest, io: Io): Promise<string | Uint8Array> {
  const { format, theme, bare, outlines, dpi, paper } = request;
  const first = scenes[0]!;
  const { scenesToHtml, sceneToSvg } = await import('@fielded/render');
  if (format === '.html') return scenesToHtml(scenes, { theme, bare, fillsPaper: paper !== null });
  if (format === '.svg' && !outlines) return sceneToSvg(first, { theme, bare });

  if (format === '.png') {
    const most = (await import('../formats/png.ts')).greatestDpi(first);
    if (dpi > most)
      throw new UsageError(
        unsaid(most < LEAST_DPI ? 'print.usage.dpi-too-large' : 'print.usage.dpi-too-fine', {
          dpi: String(dpi),
          most: String(most),
        }),
      );
  }
  const fonts = await openFontsFor(format === '.pdf' ? scenes : [first], request.font, io);
  if (format === '.pdf') return (await import('../formats/pdf.ts')).writePdf(scenes, { fonts });
  if (format === '.png')
    return (await import('../formats/png.ts')).writePng(first, dpi, { theme, bare, fontFiles: fonts.files });
  const { openLetters } = await import('@fielded/render');
  return sceneToSvg(first, { theme, bare, letters: await openLetters(fonts.typefaces) });
}

/** The fonts that drawings need; letters that none has are named on standard error. */
async function openFontsFor(scenes: readonly Scene[], given: string | undefined, io: Io): Promise<Fonts> {
  const { openFonts, sayMissingLetters } = await import('../formats/fonts.ts');
  try {
    const fonts = await openFonts(scenes, given);
    const missing = sayMissingLetters(fonts, voiceOf(io));
    if (missing !== null) await io.err(`${missing}\n`);
    return fonts;
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(inEnglish(`--font ${given}: ${error.message}.`));
    if ((error as NodeJS.ErrnoException).path === given)
      throw new UsageError(inEnglish(`--font ${given}: ${explainFailure(error).refused}.`));
    throw error;
  }
}

/** The number of the door asked for by name, from 0; undefined where none is. */
function findDoor({ doors = [], frame }: Report, { door, view }: DrawRequest): number | undefined {
  if ((view === 'door' || view === 'panel') && doors.length === 0)
    throw new UsageError(unsaid('print.usage.view-of-door', { view }));
  if (view === 'corner' && frame.cope === undefined) throw new UsageError(unsaid('print.usage.view-of-corner', {}));
  if (door === undefined) return undefined;
  const index = doors.findIndex(({ name }) => name === door);
  if (index >= 0) return index;
  const names = doors.map(({ name }) => name);
  const near = findNearest(door, names);
  const known =
    names.length === 0
      ? unsaid('print.usage.doors.none', {})
      : unsaid('print.usage.doors', { names: names.slice(0, 12).join(', ') });
  throw new UsageError(unsaid('print.usage.door', { name: door }), didYouMean(near), known);
}
