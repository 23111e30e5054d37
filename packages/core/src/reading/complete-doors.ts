import type { Door } from '../job/job.ts';
import { type Desk, figureOf } from './desk.ts';
import type { JobFile, Loose } from './job-file.ts';
import { joinPath } from './tree.ts';

/** The doors with their names filled in, checked for room for a panel and for a groove in every part of the frame. */
export function completeDoors(files: Loose<JobFile['doors']>, grooveDepth: number, desk: Desk): Door[] {
  return (files ?? []).flatMap((file, index) => {
    const at = joinPath('doors', index);
    if (file === undefined) return [];
    const across = figureOf(file.across);
    const up = figureOf(file.up);
    checkRoom('width', figureOf(file.width), 'stile', figureOf(file.stile), across, figureOf(file.muntin), at, desk);
    checkRoom('height', figureOf(file.height), 'rail', figureOf(file.rail), up, figureOf(file.muntin), at, desk);
    const divided = across > 1 || up > 1;
    if (divided && file.muntin === 0)
      desk.report(
        'muntin-missing',
        `${at}.muntin`,
        `${at} has several panels and no muntin between them`,
        'Add muntin: and its width',
      );
    checkGroove('stile', figureOf(file.stile), grooveDepth, at, desk);
    checkGroove('rail', figureOf(file.rail), grooveDepth, at, desk);
    // A muntin is grooved on both its edges.
    if (divided) checkGroove('muntin', figureOf(file.muntin) / 2, grooveDepth, at, desk);
    return Object.values(file).includes(undefined)
      ? []
      : [{ ...(file as Door), name: file.name ?? `door ${index + 1}` }];
  });
}

function checkRoom(
  size: 'width' | 'height',
  over: number,
  part: 'stile' | 'rail',
  partWidth: number,
  panels: number,
  muntin: number,
  at: string,
  desk: Desk,
): void {
  const taken = 2 * partWidth + (panels > 1 ? (panels - 1) * muntin : 0);
  if (!(taken >= over)) return;
  const muntins = panels > 1 && muntin > 0 ? ` and ${panels - 1} ${panels === 2 ? 'muntin' : 'muntins'}` : '';
  desk.report(
    'door-too-small',
    `${at}.${size}`,
    `${at}.${size}, ${desk.show(over)}, leaves no room for a panel: two ${part}s${muntins} take ${desk.show(taken)}`,
    `Write a larger ${size} or narrower parts`,
  );
}

function checkGroove(part: 'stile' | 'rail' | 'muntin', room: number, depth: number, at: string, desk: Desk): void {
  if (!(depth >= room) || room === 0) return;
  const path = `${at}.${part}`;
  const [width, why] = part === 'muntin' ? [room * 2, 'from both its edges '] : [room, ''];
  desk.report(
    'groove-through-part',
    path,
    `${path}, ${desk.show(width)}, is cut through ${why}by a groove ${desk.show(depth)} deep`,
    `Write a wider ${part}, or a shallower groove`,
  );
}
