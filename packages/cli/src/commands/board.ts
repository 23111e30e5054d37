import { extname } from 'node:path';
import { sampleBoard } from '@fielded/core';
import { readArguments, UsageError } from '../arguments.ts';
import { readText } from '../files/read-text.ts';
import { type Io, safe } from '../io.ts';
import { refusalLine } from '../report/list-faults.ts';
import { deliver } from './deliver.ts';
import { openShopFile } from './read-knives.ts';

const OPTIONS = {
  title: { type: 'string' },
  output: { type: 'string', short: 'o' },
  force: { type: 'boolean' },
} as const;

/** `fielded board`: every knife of a shop as it cuts, at one scale, for the wall. */
export async function board(argv: readonly string[], io: Io): Promise<number> {
  const { values, positionals } = readArguments(argv, OPTIONS, 'board');
  const [path, ...more] = positionals;
  if (path === undefined) throw new UsageError('board needs a shop file. See fielded help board.');
  if (more.length > 0) throw new UsageError('board takes one shop at a time. See fielded help board.');
  const output = values.output as string | undefined;
  const ending = output === undefined ? '.svg' : extname(output).toLowerCase();
  if (ending !== '.svg' && ending !== '.html')
    throw new UsageError(`${output} does not say what to write: end the name in .svg or .html.`);
  const text = readText(path);
  if (typeof text !== 'string') {
    await io.err(refusalLine(path, text));
    return 2;
  }
  const shop = await openShopFile(path, text, io);
  if (shop === null) return 2;
  const samples = sampleBoard(shop);
  if (samples.length === 0) {
    await io.err(`${safe(path)}  The shop has no knives to show. Add some under knives.\n`);
    return 1;
  }
  const render = await import('@fielded/render');
  const drawing = { samples, units: shop.units, title: (values.title as string | undefined) ?? 'Our knives' };
  const written = ending === '.svg' ? render.drawBoard(drawing) : render.boardPage(drawing);
  return (await deliver(io, output, written, values.force === true)) ? 0 : 2;
}
