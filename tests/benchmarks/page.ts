// Times the frames of a drag on the page in a real browser: npm run bench:page. A frame is everything that one movement of
// the hand sets off on the main thread: reading the job, evaluating it, laying out and painting; then the browser's own
// style and layout, which is made to happen at once to be counted.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright-core';
import { build } from 'vite';
import { servePage } from '../../packages/cli/src/serve/serve-page.ts';
import { quantile } from '../support/timing.ts';

const FRAMES = 300;
const GOALS = [
  { name: '12 pieces', outline: stepped(8), quantile: 0.5, most: 8 },
  { name: '500 pieces', outline: stepped(500), quantile: 0.95, most: 16.7 },
];

/** A job file whose raise is a free outline of that many pieces, hollows and rounds by turns, over a relief of four. */
function stepped(pieces: number): string {
  const steps = Array.from({ length: pieces - 1 }, (_, i) => {
    const x = ((i + 1) * 38) / (pieces - 1);
    const y = 9 - ((i + 1) * 8) / (pieces - 1);
    return i % 2 === 0 ? `A 60 60 0 0 1 ${x} ${y}` : `L ${x} ${y}`;
  });
  return `fielded: 1
title: ${pieces} pieces
panel: { thickness: 20 }
frame: { thickness: 22, groove: { width: 6.4, depth: 11, setback: 7.5 }, swellGap: 2 }
cuts:
  - { name: raise, side: front, profile: { shape: outline, path: "M 0 9 ${steps.join(' ')} V 0" } }
  - { name: relief, side: back, profile: { shape: cove, reach: 14, depth: 4.8, land: 9 }, run: over }
`;
}

/** Main-thread ms of each movement of a drag of the relief's depth. */
async function timeDrag(page: Page, handle: string, frames: number): Promise<number[]> {
  return page.evaluate(
    async ([key, count]) => {
      const ring = document.querySelector(`[data-handle="${key}"] .ring`)!.getBoundingClientRect();
      const drawing = document.querySelector('.drawing')!;
      const [x, y] = [ring.x + ring.width / 2, ring.y + ring.height / 2];
      const point = (type: string, dy: number) =>
        new PointerEvent(type, {
          clientX: x,
          clientY: y + dy,
          pointerId: 1,
          isPrimary: true,
          button: 0,
          bubbles: true,
          cancelable: true,
        });
      // A made-up pointer cannot be captured.
      drawing.setPointerCapture = () => {};
      drawing.dispatchEvent(point('pointerdown', 0));
      const times: number[] = [];
      for (let i = 0; i < count; i++) {
        const start = performance.now();
        drawing.dispatchEvent(point('pointermove', 6 + 30 * Math.abs(Math.sin(i / 9))));
        // What Preact puts off to a microtask, and the browser's layout.
        for (let turn = 0; turn < 4; turn++) await Promise.resolve();
        document.querySelector('.sentence')!.getBoundingClientRect();
        times.push(performance.now() - start);
        await new Promise((settle) => requestAnimationFrame(settle));
      }
      drawing.dispatchEvent(point('pointerup', 0));
      return times;
    },
    [handle, frames] as const,
  );
}

const folder = mkdtempSync(join(tmpdir(), 'fielded-page-'));
process.env.NODE_ENV = 'production';
const root = fileURLToPath(new URL('../../packages/page', import.meta.url));
await build({ root, logLevel: 'error', build: { outDir: folder, emptyOutDir: false } });
const executablePath = execFileSync('sh', ['-c', 'command -v chromium'], { encoding: 'utf8' }).trim();
const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] });
let met = true;
for (const goal of GOALS) {
  const served = await servePage(folder, () => [{ name: 'job.yaml', text: goal.outline }]);
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  // tsx names functions through a helper of its own, which the page has not.
  await page.addInitScript('globalThis.__name = (named) => named');
  await page.goto(`${served.address}#file`);
  await page.locator('.drawing .dimension').first().waitFor();
  await timeDrag(page, 'cuts[1] land', 60);
  const times = await timeDrag(page, 'cuts[1] land', FRAMES);
  const at = quantile(times, goal.quantile);
  const figures = [0.5, 0.95, 1].map((share) => quantile(times, share).toFixed(1));
  met &&= at <= goal.most;
  console.log(
    `${goal.name}: median ${figures[0]} ms, 95 % within ${figures[1]} ms, longest ${figures[2]} ms; ` +
      `${goal.quantile * 100} % within ${goal.most} ms: ${at <= goal.most ? 'yes' : 'no'}`,
  );
  await page.close();
  await served.close();
}
await browser.close();
rmSync(folder, { recursive: true, force: true });
process.exitCode = met ? 0 : 1;
