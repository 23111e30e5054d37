import type { Report } from '@fielded/core';
import { flipCurve, readReportPath } from '@fielded/geometry';
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

/** The sheets for the bench as a PDF; its writer is fetched now. */
export async function benchPdf(report: Report, paper: PaperName): Promise<Blob> {
  const { scenesPdf } = await fetchPart(() => import('./pdf.ts'));
  return scenesPdf(benchScenes(report, paper));
}

function benchScenes(report: Report, paper: PaperName): Scene[] {
  return sheets(report, { view: 'sheet', paper, date: new Date().toISOString().slice(0, 10) });
}

/** The outlines to be ground as DXF in millimetres; where no head is named, what each cut takes. */
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
      // The section's y runs down; a drawing program's runs up.
      chains: readReportPath(swept).map((chain) => chain.map((curve) => flipCurve(curve, 0))),
    })),
  );
}

/** A name that every drawing program takes for a layer. */
function layerName(name: string): string {
  return name.replace(/[^A-Za-z0-9_ -]+/g, '_').slice(0, 60) || 'cut';
}
