import type { Report } from '@fielded/core';
import { knifeScene, type PlainView, scene, seasonScene, spreadScene } from '@fielded/render';
import { doorSize } from '../job/door-sizes.ts';
import { shownDoor } from '../job/shown-door.ts';
import { addDoorSizes } from '../job/sizes.ts';
import { steelOf, type ViewName, type ViewScene } from './view-scene.ts';

// Figures of doors can be typed over from when they are first drawn.
addDoorSizes(doorSize);

/** A view that is only looked at. A knife and its limiter are always drawn at full size, charts at their own. */
export function drawOther(report: Report, view: ViewName, scale: number): ViewScene {
  return { ...sceneOf(report, view, scale), panel: null, frame: null };
}

function sceneOf(report: Report, view: ViewName, scale: number) {
  const steel = steelOf(view, report);
  if (steel !== null) return knifeScene({ ...steel, units: report.units, title: report.title });
  if (view === 'spread') return spreadScene(report);
  if (view === 'season') return seasonScene(report);
  const door = Math.max(0, Math.min(shownDoor.value, (report.doors?.length ?? 1) - 1));
  return scene(report, { view: view as PlainView, scale, bare: true, ...(report.doors?.length && { door }) });
}
