import { sampleBoard } from '@fielded/core';
import type { OfficePaper } from '@fielded/render';
import { type Command, defineCommand } from '../command.ts';
import { readTextFile } from '../files/read-text.ts';
import { type Io, safe } from '../io.ts';
import { refusalLine } from '../report/list-faults.ts';
import { say, voiceOf } from '../words/say.ts';
import { deliver } from './deliver.ts';
import { openShopFile } from './read-knives.ts';
import { checkPaper, FILE_ENDINGS, FORCE, LANGUAGE, output, PAPER } from './shared-options.ts';

/** `fielded board`: every knife of a shop as it cuts, at one scale, for the wall. */
export const board: Command = defineCommand(
  {
    summary: "draw the shop's sample board: every knife's section",
    place: {
      name: 'SHOP',
      least: 1,
      most: 1,
      needs: 'a shop file',
      takes: 'one shop at a time',
      endings: FILE_ENDINGS,
    },
    about: [
      "Draws the shop's sample board: every knife's section at full size with its name and main sizes, to hang on the wall or to show to clients.",
    ],
    options: {
      title: { value: 'WORDS', says: 'what stands above it' },
      output: output(
        '.svg one drawing, .html a page that prints it on sheets; without it, the drawing goes to standard output',
      ),
      paper: PAPER,
      language: LANGUAGE,
      force: FORCE,
    },
    formats: ['.svg', '.html'],
    statuses: ['written', 'there is nothing to show', 'an input could not be read'],
  },
  async ({ path, values, format }, io) => drawSamples(path, values, format, io),
);

interface Asked {
  readonly title: string | undefined;
  readonly output: string | undefined;
  readonly paper: OfficePaper | undefined;
  readonly force: boolean;
}

async function drawSamples(
  path: string,
  { title, output, paper, force }: Asked,
  format: '.svg' | '.html',
  io: Io,
): Promise<number> {
  checkPaper(paper, output !== undefined && format === '.html', ['.html']);
  const text = readTextFile(path);
  if (typeof text !== 'string') {
    await io.err(refusalLine(path, text));
    return 2;
  }
  const shop = await openShopFile(path, text, io);
  if (shop === null) return 2;
  const samples = sampleBoard(shop);
  if (samples.length === 0) {
    await io.err(`${safe(path)}  ${say('print.board.none', {}, voiceOf(io))}\n`);
    return 1;
  }
  const render = await import('@fielded/render');
  const drawing = {
    samples,
    units: shop.units,
    title: title ?? say('print.board', {}, voiceOf(io)),
    ...(io.language && { language: io.language }),
    ...(paper && { paper }),
  };
  const written = format === '.svg' ? render.drawBoard(drawing) : render.boardPage(drawing);
  return (await deliver(io, output, written, force)) ? 0 : 2;
}
