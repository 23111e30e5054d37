import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

/** The form without comments: the browser reads it anew on every page, in half the time. */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds wrong on the page, or in the parts of it that are named; each with the elements concerned. */
export function axeFaults(page: Page, ...within: readonly string[]): Promise<string[]> {
  return findFaults(page, within);
}

/** What axe finds wrong with the page's colours alone: all that differs between light and dark. */
export function colourFaults(page: Page): Promise<string[]> {
  return findFaults(page, [], ['color-contrast', 'link-in-text-block']);
}

async function findFaults(page: Page, within: readonly string[], rules?: string[]): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(AXE);
  return page.evaluate(
    async ([parts, runOnly]) => {
      const { axe } = globalThis as unknown as { axe: typeof import('axe-core') };
      const context = parts.length === 0 ? document : { include: parts.map((part) => [part]) };
      const { violations, passes } = await axe.run(context, {
        resultTypes: ['violations'],
        // Nothing here plays, and the rule that reads style sheets is not among those that axe runs by itself.
        preload: false,
        ...(runOnly && { runOnly }),
      });
      if (passes.length === 0) throw new Error('axe looked at nothing');
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join(', ')}`);
    },
    [within, rules] as const,
  );
}
