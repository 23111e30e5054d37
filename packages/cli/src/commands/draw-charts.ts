import type { Report } from '@fielded/core';
import type { Scene } from '@fielded/render';
import { UsageError, unsaid } from '../usage-error.ts';

/** The views that are charts of figures, not drawings of wood: they have no scale and go on no sheet. */
const CHARTS: readonly ['spread', 'season'] = ['spread', 'season'];

export type Chart = (typeof CHARTS)[number];

export function isChart(view: string): view is Chart {
  return CHARTS.some((chart) => chart === view);
}

/** A chart of a job's spread or its seasons. Throws `UsageError` where the job does not give what it shows. */
export async function drawChart(report: Report, chart: Chart): Promise<Scene> {
  const { seasonScene, spreadScene } = await import('@fielded/render');
  if (chart === 'spread') {
    if (report.spread === undefined) throw missing('print.usage.no-spread', 'spread: { thickness: 0.15, height: 0.1 }');
    return spreadScene(report);
  }
  if (report.season === undefined)
    throw missing('print.usage.no-seasons', 'season: { made: 8, driest: 6, dampest: 11 }');
  return seasonScene(report);
}

function missing(sentence: 'print.usage.no-spread' | 'print.usage.no-seasons', example: string): UsageError {
  return new UsageError(unsaid(sentence, { example }));
}
