import { basename, extname } from 'node:path';
import { formatNumber, type Voice } from '@fielded/core';
import type { Traced, TracedSide } from '@fielded/exchange';
import { type Command, defineCommand } from '../command.ts';
import { readBytes } from '../files/read-bytes.ts';
import type { Io } from '../io.ts';
import { sayFigure } from '../report/figures.ts';
import { jsonText } from '../report/json-text.ts';
import { refusalLine } from '../report/list-faults.ts';
import { UsageError, unsaid } from '../usage-error.ts';
import { say, voiceOf } from '../words/say.ts';
import { deliver } from './deliver.ts';
import { FORCE, JSON_OUT, LANGUAGE, output } from './shared-options.ts';

/** The largest picture file that is read, bytes. */
const MOST_BYTES = 300_000_000;

type Format = '.yaml' | '.svg' | '.dxf';

/** `fielded trace`: a kept sample's end grain, scanned, into thickness and the outlines of its cuts. */
export const trace: Command = defineCommand(
  {
    summary: "a scan of a sample's end grain into outlines and a job",
    place: {
      name: 'SCAN',
      least: 1,
      most: 1,
      needs: 'a scan, PNG or JPEG',
      takes: 'one scan at a time',
      endings: ['.png', '.jpg', '.jpeg'],
    },
    about: [
      'Reads the end grain of a kept sample off a flatbed scan or a straight photo: its thickness, and what the cuts on its two faces left, in lines and arcs. The face whose cut reaches further in is the front. The sample may lie either way up or round and a little out of level; leave 20 mm of field on it.',
    ],
    options: {
      dpi: {
        value: 'N',
        says: 'pixels to the inch: goes before what the file says of itself; 600 is good to 0.05 mm',
        whole: [100, 9600],
      },
      json: JSON_OUT,
      language: LANGUAGE,
      output: output(
        'by its ending: .yaml a job with this panel in a usual frame, .svg what was read drawn over the scan, .dxf lines and true arcs, front and back in a layer each',
      ),
      force: FORCE,
    },
    formats: ['.yaml', '.svg', '.dxf'],
    statuses: ['traced', null, 'the scan could not be read'],
  },
  async ({ path, values, format }, io) => {
    if (values.json && values.output !== undefined) throw new UsageError(unsaid('print.usage.json-not-in-file', {}));
    const bytes = readBytes(path, MOST_BYTES);
    if ('refused' in bytes) return refuse(io, path, bytes);
    const { readScan, traceScan } = await import('@fielded/exchange');
    const scan = readScan(bytes);
    if ('refused' in scan) return refuse(io, path, scan);
    const dpi = values.dpi === undefined ? scan.dpi : ([values.dpi, values.dpi] as const);
    if (dpi === null)
      return refuse(io, path, {
        refused: 'the file does not say how many pixels make an inch',
        instead: 'Give --dpi, such as --dpi 600',
      });
    const traced = traceScan(scan, dpi);
    if ('refused' in traced) return refuse(io, path, traced);
    if (values.json) {
      await io.out(jsonText(answer(traced)));
      return 0;
    }
    if (values.output !== undefined) {
      const written = await write(traced, scan, basename(path, extname(path)), format);
      if (!(await deliver(io, values.output, written, values.force))) return 2;
    }
    await (values.output === undefined ? io.out : io.err)(describe(path, traced, voiceOf(io)));
    return 0;
  },
);

async function refuse(io: Io, path: string, refusal: Parameters<typeof refusalLine>[1]): Promise<number> {
  await io.err(refusalLine(path, refusal));
  return 2;
}

async function write(
  traced: Traced,
  scan: Parameters<typeof import('@fielded/exchange').tracedSvg>[0],
  title: string,
  format: Format,
): Promise<string> {
  const { tracedJob, tracedSvg, writeDxf } = await import('@fielded/exchange');
  if (format === '.svg') return tracedSvg(scan, traced);
  if (format === '.yaml') return tracedJob(traced, title);
  const { front, back } = traced;
  return writeDxf([
    { name: 'FRONT', chains: [front.chain] },
    ...(back ? [{ name: 'BACK', chains: [back.chain] }] : []),
  ]);
}

/** What `--json` prints: the chains are in the path data already. */
function answer({ dpi, thickness, edge, turned, front, back }: Traced) {
  const side = ({ path, reach, depth, deviation, arcs }: TracedSide) => ({ path, reach, depth, deviation, arcs });
  return { dpi, thickness, edge, turned, front: side(front), back: back && side(back) };
}

function describe(path: string, { dpi, thickness, edge, turned, front, back }: Traced, voice: Voice): string {
  const length = (value: number) => `${fixed(value, 2, voice)} mm`;
  const side = (line: 'print.trace.front' | 'print.trace.back', { reach, depth, deviation, arcs }: TracedSide) => [
    `  ${say(line, { reach: length(reach), depth: length(depth), deviation: length(deviation) }, voice)}`,
    ...arcs.map((arc) => `    ${sayArc(arc, voice)}`),
  ];
  const pixels = dpi[0] === dpi[1] ? `${Math.round(dpi[0])}` : `${Math.round(dpi[0])} × ${Math.round(dpi[1])}`;
  const sizes = { thickness: length(thickness), edge: length(edge) };
  return [
    say(
      'print.trace.head',
      { file: path, ...sizes, pixels, turned: sayFigure(formatNumber(turned, 1), voice.language) },
      voice,
    ),
    ...side('print.trace.front', front),
    ...(back ? side('print.trace.back', back) : [`  ${say('print.trace.back.none', {}, voice)}`]),
    say('print.trace.look', {}, voice),
    '',
  ].join('\n');
}

function sayArc(
  { from, to, radius, uncertainty, nominal, deviation }: TracedSide['arcs'][number],
  voice: Voice,
): string {
  const length = (value: number) => `${fixed(value, 2, voice)} mm`;
  const figures = { from: length(from), to: length(to), radius: length(radius), uncertainty: length(uncertainty) };
  if (nominal === null) return say('print.trace.arc', figures, voice);
  const offered = { nominal: sayFigure(String(nominal), voice.language), deviation: length(deviation) };
  return say('print.trace.arc.nominal', { ...figures, ...offered }, voice);
}

function fixed(value: number, digits: number, { language }: Voice): string {
  return sayFigure(value.toFixed(digits), language);
}
