import type { Scene } from './scene.ts';
import type { Theme } from './style.ts';
import { sceneToSvg } from './svg.ts';
import { escapeXml, safeText } from './text/safe-text.ts';
import { writeNumber } from './write-number.ts';

/** Words that are read out and not shown. */
const UNSEEN = 'position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap';

export interface HtmlOptions {
  readonly theme?: Theme;
  /** Leaves the sheet of paper behind the drawing out. */
  readonly bare?: boolean;
  /** For sheets that fill their paper: says so to the printer, so that nothing is shrunk. Leave it out within another page. */
  readonly fillsPaper?: boolean;
}

/**
 * Drawings as a piece of HTML to put into a page or a quote: one figure each, with its title and its description for screen
 * readers. No script, no ids, no classes, nothing loaded from elsewhere.
 *
 * On paper a drawing has its true size as long as the page is wide enough; on a narrow screen it shrinks to fit.
 */
export function scenesToHtml(scenes: readonly Scene[], options: HtmlOptions = {}): string {
  const first = scenes[0];
  const lines: string[] = [];
  if (options.fillsPaper && first) {
    const size = `${writeNumber(first.width)}mm ${writeNumber(first.height)}mm`;
    lines.push(`<style>@page{size:${size};margin:0}@media print{body{margin:0}}</style>`);
  }
  scenes.forEach((scene, i) => {
    const svg = sceneToSvg(scene, { theme: options.theme ?? 'print', bare: options.bare ?? false }).trim();
    const fluid = svg.replace('<svg ', '<svg style="display:block;max-width:100%;height:auto" ');
    const breaks = options.fillsPaper && i < scenes.length - 1 ? ';break-after:page' : '';
    lines.push(
      `<figure style="margin:0;position:relative${breaks}">`,
      fluid,
      `<figcaption style="${UNSEEN}"><b>${escapeXml(safeText(scene.title))}</b> ${escapeXml(safeText(scene.description))}</figcaption>`,
      '</figure>',
    );
  });
  return `${lines.join('\n')}\n`;
}
