import type { Report } from '@fielded/core';
import { type Curve, readReportPath } from '@fielded/geometry';
import {
  draw,
  drawKnife,
  type PaperName,
  type PlainView,
  type Scene,
  sceneToSvg,
  seasonScene,
  sheets,
  spreadScene,
} from '@fielded/render';
import { fetchPart } from '../desk/fetch-part.ts';
import { steelOf, type ViewName } from '../stage/view-scene.ts';

/** A view as an SVG file: at its usual scale, ink on white. */
export function drawingSvg(report: Report, view: ViewName): string {
  const steel = steelOf(view, report);
  if (steel !== null) return drawKnife({ ...steel, units: report.units, title: report.title });
  if (view === 'spread') return sceneToSvg(spreadScene(report));
  if (view === 'season') return sceneToSvg(seasonScene(report));
  return draw(report, { view: view as PlainView });
}

/** The sheets for the bench at full size, each an SVG in millimetres. */
export function benchSheets(report: Report, paper: PaperName): string[] {
  return benchScenes(report, paper).map((scene) => sceneToSvg(scene, { theme: 'print' }));
}

/** The same as a PDF, for which the writer is fetched now. */
export async function benchPdf(report: Report, paper: PaperName): Promise<Blob> {
  const { scenesPdf } = await fetchPart(() => import('./pdf.ts'));
  return scenesPdf(benchScenes(report, paper));
}

function benchScenes(report: Report, paper: PaperName): Scene[] {
  return sheets(report, { view: 'sheet', paper, date: new Date().toISOString().slice(0, 10) });
}

/** What is to be ground, or where no head is named what each cut takes, as DXF in millimetres. */
export async function outlinesDxf(report: Report): Promise<string> {
  const { writeDxf } = await fetchPart(() => import('@fielded/exchange'));
  const layers = (report.knives ?? []).flatMap(({ cut, outline, limiter }) => [
    { name: layerName(cut), chains: readReportPath(outline) },
    ...(limiter ? [{ name: layerName(`${cut} limiter`), chains: readReportPath(limiter.outline) }] : []),
  ]);
  if (layers.length > 0) return writeDxf(layers);
  return writeDxf(
    report.section.cuts.map(({ name, swept }) => ({
      name: layerName(name),
      chains: readReportPath(swept).map(upright),
    })),
  );
}

/** The section runs downwards; a drawing program's y runs up. */
function upright(chain: readonly Curve[]): Curve[] {
  return chain.map((c) => ({ ...c, y0: -c.y0, y1: -c.y1, cy: -c.cy, turn: -c.turn as Curve['turn'] }));
}

/** Layers have plain names. */
function layerName(name: string): string {
  return name.replace(/[^A-Za-z0-9_ -]+/g, '_').slice(0, 60) || 'cut';
}
