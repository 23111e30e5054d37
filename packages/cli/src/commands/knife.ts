import { findNearest, type KnifeReport, type ReadOptions, toMillimetres } from '@fielded/core';
import { type Chain, line, readReportPath } from '@fielded/geometry';
import type { KnifeOrderFields, KnifeOrderSheet, OfficePaper } from '@fielded/render';
import { type Command, defineCommand } from '../command.ts';
import { type Io, safe } from '../io.ts';
import { remarkProblems } from '../report/list-problems.ts';
import { didYouMean, thereAre, UsageError, unsaid } from '../usage-error.ts';
import { say, voiceOf } from '../words/say.ts';
import { deliver } from './deliver.ts';
import { openShop } from './read-jobs.ts';
import { type KnifeFile, openKnives } from './read-knives.ts';
import { checkPaper, FILE_ENDINGS, FORCE, LANGUAGE, output, PAPER, SHOP } from './shared-options.ts';

type Part = 'knife' | 'limiter';
type Format = '.svg' | '.pdf' | '.html' | '.dxf' | '.csv';

/** `fielded knife`: what to grind for one cut of a job or one knife of a shop, as a drawing, for a machine or as ordinates. */
export const knife: Command = defineCommand(
  {
    summary: 'what to grind: a knife or limiter as drawing, DXF, ordinates',
    place: {
      name: 'JOB|SHOP',
      least: 1,
      most: 1,
      needs: 'a job or a shop file',
      takes: 'one file at a time',
      endings: FILE_ENDINGS,
    },
    about: [
      'Works out what to grind so that the wood comes out as drawn: the outline on the steel, stretched by the rake and shear of the head, and what of it will rub. For a cut of a job that names its head, or a knife of a shop file that does.',
    ],
    options: {
      name: { value: 'NAME', says: "the cut's name or the knife's; needed where there are several" },
      part: {
        value: 'PART',
        says: 'knife, the default, or limiter: the limiter ahead of its edge',
        choices: ['knife', 'limiter'],
      },
      output: output(
        'by its ending: .pdf or .html an order that a grinder can work from alone, .svg one drawing at full size with ordinates, .dxf lines and arcs in millimetres on layers, .csv the ordinates; without it, the drawing goes to standard output',
      ),
      number: { value: 'WORDS', says: "the order's number, in its title block" },
      revision: { value: 'WORDS', says: "the order's revision" },
      date: { value: 'WORDS', says: 'as it shall stand in the title block' },
      'ordered-by': { value: 'NAME', says: 'as it shall stand in the title block' },
      paper: PAPER,
      shop: SHOP,
      language: LANGUAGE,
      force: FORCE,
    },
    formats: ['.svg', '.pdf', '.html', '.dxf', '.csv'],
    after: [
      's runs along the tip line and grows with depth; t runs from it towards the axis. The drawing shows the cutting face; DXF and CSV have s to the right, whichever face that is.',
    ],
    statuses: ['written', 'the knife has an error', 'an input could not be read'],
  },
  async ({ path, values, format }, io) => {
    const shop = await openShop(values.shop, io);
    return shop === null ? 2 : orderKnife(path, shop, values, format, io);
  },
);

interface OrderOptions {
  readonly name: string | undefined;
  readonly part: Part | undefined;
  readonly output: string | undefined;
  readonly force: boolean;
  readonly number: string | undefined;
  readonly revision: string | undefined;
  readonly date: string | undefined;
  readonly 'ordered-by': string | undefined;
  readonly paper: OfficePaper | undefined;
}

type OrderFields = KnifeOrderFields & Pick<KnifeOrderSheet, 'paper'>;

async function orderKnife(
  path: string,
  shop: ReadOptions['shop'],
  values: OrderOptions,
  format: Format,
  io: Io,
): Promise<number> {
  const { name: asked, part = 'knife' } = values;
  const fields = readFields(values, format);
  const file = await openKnives(path, shop, asked, io);
  if (file === null) return 2;
  const chosen = choose(file, asked, io);
  if (typeof chosen === 'string') {
    await io.err(`${safe(`${path}  ${chosen}`)}\n`);
    return 1;
  }
  if (part === 'limiter' && chosen.limiter === null) {
    await io.err(remarkProblems(chosen.warnings, voiceOf(io)));
    return 1;
  }
  const written = await write(file, chosen, part, format, fields, io);
  if (!(await deliver(io, values.output, written, values.force))) return 2;
  await io.err(remarkProblems(chosen.warnings, voiceOf(io)));
  return chosen.warnings.some((problem) => problem.severity === 'error') ? 1 : 0;
}

/** The knife asked for by the name of its cut or its own; the only one there is; or why there is none. */
function choose(file: KnifeFile, asked: string | undefined, io: Io): KnifeReport | string {
  const { knives, names, kind } = file;
  const known = [...names.keys()];
  if (known.length === 0) return say('print.knife.none', {}, voiceOf(io));
  if (asked === undefined) {
    const [only, another] = knives;
    if (only && !another) return only;
    if (only) throw new UsageError(unsaid('print.usage.several-knives', {}), thereAre(knives.map(({ cut }) => cut)));
    return [...names.values()].find((why) => why !== null)!;
  }
  const found = knives.find((k) => k.cut === asked) ?? knives.find((k) => k.knife === asked);
  if (found) return found;
  const why = names.get(asked);
  if (why) return why;
  const near = findNearest(asked, known);
  const unknown = unsaid(kind === 'job' ? 'print.usage.name-of-cut' : 'print.usage.name-of-knife', { name: asked });
  throw new UsageError(unknown, didYouMean(near), thereAre(known));
}

/** What stands in the order's title block, and its paper; only orders have them. */
function readFields(values: OrderOptions, format: Format): OrderFields {
  const isOrder = format === '.pdf' || format === '.html';
  for (const name of ['number', 'revision', 'date', 'ordered-by'] as const)
    if (values[name] !== undefined && !isOrder) throw new UsageError(unsaid('print.usage.of-orders', { option: name }));
  checkPaper(values.paper, isOrder, ['.pdf', '.html']);
  if (isOrder && values.part !== undefined) throw new UsageError(unsaid('print.usage.part-of-order', {}));
  return {
    number: values.number ?? '',
    revision: values.revision ?? '',
    date: values.date ?? '',
    orderedBy: values['ordered-by'] ?? '',
    ...(values.paper && { paper: values.paper }),
  };
}

/** Drawing and exchange are loaded only when they are needed. */
async function write(
  file: KnifeFile,
  knife: KnifeReport,
  part: Part,
  format: Format,
  fields: OrderFields,
  { language }: Io,
): Promise<string | Uint8Array> {
  const { units, title } = file;
  const words = { units, ...(language && { language }) };
  if (format === '.pdf' || format === '.html') {
    const { orderSheets, scenesToHtml } = await import('@fielded/render');
    const scenes = orderSheets({ knife, ...words, title, ...fields });
    if (format === '.html') return scenesToHtml(scenes, { fillsPaper: true });
    return (await import('../formats/pdf.ts')).writePdf(scenes);
  }
  if (format === '.svg') return (await import('@fielded/render')).drawKnife({ knife, ...words, title, part });
  const exchange = await import('@fielded/exchange');
  const limiter = knife.limiter;
  const { outline, ordinates } = part === 'limiter' && limiter !== null ? limiter : knife;
  if (format === '.csv') {
    const inUnit = (mm: number) => mm / toMillimetres(1, units);
    const rows = ordinates.map(({ s, t }) => [inUnit(s), inUnit(t)]);
    return exchange.writeCsv({ headings: [`s (${units})`, `t (${units})`], rows }, language?.decimal);
  }
  return exchange.writeDxf(dxfLayers(knife, part, outline));
}

/** What is to be ground first, then what shows where it lies: each on its own layer, in (s, t). */
function dxfLayers(knife: KnifeReport, part: Part, outline: string): { name: string; chains: readonly Chain[] }[] {
  const { limiter, wood, cuttingRadius, rake } = knife;
  const chain = readReportPath(outline);
  const curves = chain.flat();
  const ends = [curves[0]!, curves[curves.length - 1]!];
  const [first, last] = [ends[0]!, ends[1]!];
  const far = Math.max(...curves.flatMap((c) => [c.y0, c.y1])) + 20;
  const blank = [
    line(first.x0, first.y0, first.x0, far),
    line(first.x0, far, last.x1, far),
    line(last.x1, far, last.x1, last.y1),
  ];
  // Where the face passes nearest to the spindle's axis: R·cos γ from the tip line.
  const axis = cuttingRadius * Math.cos((rake * Math.PI) / 180);
  const [from, to] = [Math.min(first.x0, last.x1) - 10, Math.max(first.x0, last.x1) + 10];
  return [
    { name: part.toUpperCase(), chains: chain },
    ...(part === 'limiter' ? [{ name: 'KNIFE', chains: readReportPath(knife.outline) }] : []),
    ...(part === 'knife' && limiter ? [{ name: 'LIMITER', chains: readReportPath(limiter.outline) }] : []),
    { name: 'WOOD', chains: readReportPath(wood.outline) },
    { name: 'AXIS', chains: [[line(from, axis, to, axis)]] },
    { name: 'BLANK', chains: [blank] },
  ];
}
