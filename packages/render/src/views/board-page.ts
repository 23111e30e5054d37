import type { OfficePaper } from '../paper.ts';
import { escapeXml, safeText } from '../text/safe-text.ts';
import { sayNote } from '../words/english/note.ts';
import { saySample } from '../words/english/sample.ts';
import { type BoardDrawing, drawBoardSheets } from './board.ts';

/** As CSS has them. */
const PAPER_SIZES: Readonly<Record<OfficePaper, string>> = { a4: 'A4', letter: 'letter' };

/**
 * The sample board as a web page that prints one sheet a page at true size: no script, nothing loaded from elsewhere.
 *
 * The sheets are narrower than the paper within its margins, so that a browser has no reason to shrink them.
 */
export function boardPage(drawing: BoardDrawing): string {
  const title = escapeXml(saySample('board.title', { board: safeText(drawing.title) }, drawing));
  const sheets = drawBoardSheets(drawing).map((svg) => `<section>${svg.trim()}</section>`);
  return `<!doctype html>
<html lang="${escapeXml(sayNote('page.language', {}, drawing))}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>
@page { size: ${PAPER_SIZES[drawing.paper ?? 'a4']} portrait; margin: 5mm }
body { margin: 0; background: #faf7f0 }
section { width: max-content; margin: 8mm auto; background: #fff }
section svg { display: block }
@media print {
  body { background: #fff }
  section { margin: 0; break-after: page }
  section:last-of-type { break-after: auto }
}
</style>
</head>
<body>
${sheets.join('\n')}
</body>
</html>
`;
}
