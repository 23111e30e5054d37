import { sceneToSvg } from '../svg.ts';
import { base64 } from '../text/base64.ts';
import { escapeXml } from '../text/safe-text.ts';
import type { Bitmap, Block, Cell, Table, TextDocument } from './document.ts';

const STYLE = `html{--start:left;--end:right}html[dir=rtl]{--start:right;--end:left}svg{direction:ltr}p,li,dd,td,figcaption{unicode-bidi:plaintext;text-align:var(--start)}
body{font:11pt/1.45 "IBM Plex Sans","DejaVu Sans",Arial,sans-serif;color:#1d2430;max-width:180mm;margin:12mm auto;padding:0 4mm;overflow-wrap:break-word}
h1{font-size:19pt;font-weight:600;margin:10mm 0 4mm}h2{font-size:13pt;font-weight:600;margin:8mm 0 2mm;break-after:avoid}
p{margin:0 0 3mm}.quiet{color:#5a6270}.trouble{color:#b3261e}
header{display:flex;justify-content:space-between;gap:8mm;align-items:flex-start}header img{max-height:22mm;max-width:70mm}
header p{margin:0;text-align:var(--end)}dl{display:grid;grid-template-columns:max-content minmax(0,1fr);gap:1mm 6mm;margin:0 0 4mm}dt{color:#5a6270}dd{margin:0}
table{border-collapse:collapse;width:100%;margin:0 0 4mm;font-variant-numeric:tabular-nums}thead{display:table-header-group}
th,td{text-align:var(--start);vertical-align:top;padding-block:1.2mm;padding-inline:0 3mm;border-bottom:.18mm solid #c4ae92}th{font-weight:600}
td{overflow-wrap:anywhere}td.end{white-space:nowrap}
th.end,td.end{text-align:var(--end);padding-block:1.2mm;padding-inline:3mm 0}tr{break-inside:avoid}tfoot .total td{font-weight:600;font-size:13pt}td svg{display:block;max-width:100%;height:auto}
.figures{display:flex;flex-wrap:wrap;align-items:flex-end;gap:6mm;margin:0 0 4mm}figure{margin:0;break-inside:avoid;max-width:100%}figure svg{display:block;max-width:100%;height:auto}
figcaption{color:#5a6270;font-size:9.5pt}.sign{display:flex;gap:12mm;margin-top:18mm;break-inside:avoid}.sign p{flex:1;border-top:.25mm solid #1d2430;padding-top:1mm}
@media print{body{margin:0;max-width:none;padding:0}}@page{margin:18mm}`;

/** A document as a complete HTML page: no script, nothing loaded from elsewhere, pictures inside it. */
export function documentToHtml(document: TextDocument): string {
  return `${[
    '<!doctype html>',
    `<html lang="${escapeXml(document.language)}"${isLeftwards(document.language) ? ' dir="rtl"' : ''}>`,
    '<head>',
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeXml(document.title)}</title>`,
    `<style>${STYLE}</style>`,
    '</head>',
    '<body>',
    ...document.blocks.map(writeBlock),
    `<p class="quiet">${escapeXml(document.foot)}</p>`,
    '</body>',
    '</html>',
  ].join('\n')}\n`;
}

/** Scripts that run from right to left, by the codes of ISO 15924. */
const LEFTWARDS = ['Arab', 'Hebr', 'Thaa', 'Syrc', 'Nkoo', 'Adlm', 'Rohg'];

/** Whether a language is written from right to left, by its likely script (Unicode CLDR, as the runtime's Intl has it). */
function isLeftwards(language: string): boolean {
  return LEFTWARDS.includes(new Intl.Locale(language).maximize().script ?? '');
}

function writeBlock(block: Block): string {
  switch (block.kind) {
    case 'letterhead':
      return `<header><div>${block.logo ? logo(block.logo, block.name) : ''}</div><p><b>${escapeXml(block.name)}</b>${block.address.map((line) => `<br>${escapeXml(line)}`).join('')}</p></header>`;
    case 'title':
      return `<h1>${escapeXml(block.text)}</h1>`;
    case 'heading':
      return `<h2>${escapeXml(block.text)}</h2>`;
    case 'paragraph':
      return `<p${block.tone ? ` class="${block.tone}"` : ''}>${escapeXml(block.text)}</p>`;
    case 'list':
      return `<ul>${block.items.map((item) => `<li>${escapeXml(item)}</li>`).join('')}</ul>`;
    case 'facts':
      return `<dl>${block.facts.map(([name, value]) => `<dt>${escapeXml(name)}</dt><dd>${withBreaks(value)}</dd>`).join('')}</dl>`;
    case 'figures':
      return `<div class="figures">${block.figures
        .map(
          ({ picture, caption }) =>
            `<figure>${sceneToSvg(picture, { theme: 'print', bare: true }).trim()}<figcaption>${escapeXml(caption)}</figcaption></figure>`,
        )
        .join('')}</div>`;
    case 'table':
      return writeTable(block);
    case 'signatures':
      return `<div class="sign">${block.names.map((name) => `<p>${escapeXml(name)}</p>`).join('')}</div>`;
  }
}

function writeTable({ about, head, rows, foot, align, total }: Table): string {
  const cell = (tag: string, content: Cell, column: number) =>
    `<${tag}${align[column] === 'end' ? ' class="end"' : ''}>${typeof content === 'string' ? escapeXml(content) : sceneToSvg(content, { theme: 'print', bare: true }).trim()}</${tag}>`;
  const row = (tag: string, cells: readonly Cell[], look = '') =>
    `<tr${look}>${cells.map((content, column) => cell(tag, content, column)).join('')}</tr>`;
  const last =
    foot.length === 0
      ? ''
      : `<tfoot>${foot.map((cells, i) => row('td', cells, i === total ? ' class="total"' : '')).join('')}</tfoot>`;
  return `<table aria-label="${escapeXml(about)}"><thead>${row('th', head)}</thead><tbody>${rows.map((cells) => row('td', cells)).join('')}</tbody>${last}</table>`;
}

function logo({ png }: Bitmap, name: string): string {
  return `<img alt="${escapeXml(name)}" src="data:image/png;base64,${base64(png)}">`;
}

function withBreaks(value: string): string {
  return value.split('\n').map(escapeXml).join('<br>');
}
