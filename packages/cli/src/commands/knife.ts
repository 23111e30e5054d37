import { findNearest, type KnifeReport, type ReadOptions, toMillimetres } from '@fielded/core';
import { readReportPath } from '@fielded/geometry';
import { listWords, UsageError } from '../arguments.ts';
import { type Command, defineCommand } from '../command.ts';
import { type Io, safe } from '../io.ts';
import { listProblems } from '../report/list-problems.ts';
import { WIDTH } from '../report/plain-report.ts';
import { deliver } from './deliver.ts';
import { openShop } from './read-jobs.ts';
import { type KnifeFile, openKnives } from './read-knives.ts';
import { FILE_ENDINGS, FORCE, output, SHOP } from './shared-options.ts';

type Part = 'knife' | 'limiter';
type Format = '.svg' | '.dxf' | '.csv';

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
        says: 'knife, the default, or limiter: the limiter that stands behind its edge',
        choices: ['knife', 'limiter'],
      },
      output: output(
        'by its ending: .svg a drawing at full size with ordinates, .dxf lines and arcs in millimetres, .csv the ordinates; without it, the drawing goes to standard output',
      ),
      shop: SHOP,
      force: FORCE,
    },
    formats: ['.svg', '.dxf', '.csv'],
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

async function orderKnife(
  path: string,
  shop: ReadOptions['shop'],
  values: { name: string | undefined; part: Part | undefined; output: string | undefined; force: boolean },
  format: Format,
  io: Io,
): Promise<number> {
  const { name: asked, part = 'knife' } = values;
  const file = await openKnives(path, shop, asked, io);
  if (file === null) return 2;
  const chosen = choose(file, asked);
  if (typeof chosen === 'string') {
    await io.err(`${safe(`${path}  ${chosen}`)}\n`);
    return 1;
  }
  if (part === 'limiter' && chosen.limiter === null) {
    await io.err(`${listProblems(chosen.warnings, WIDTH, (text) => text).join('\n')}\n`);
    return 1;
  }
  const written = await write(file, chosen, part, format);
  if (!(await deliver(io, values.output, written, values.force))) return 2;
  if (chosen.warnings.length > 0) await io.err(`${listProblems(chosen.warnings, WIDTH, (text) => text).join('\n')}\n`);
  return chosen.warnings.some((problem) => problem.severity === 'error') ? 1 : 0;
}

/** The knife asked for by the name of its cut or its own; the only one there is; or why there is none. */
function choose(file: KnifeFile, asked: string | undefined): KnifeReport | string {
  const { knives, names, kind } = file;
  const known = [...names.keys()];
  const what = kind === 'job' ? 'cut' : 'knife';
  if (known.length === 0) return 'The file has no knives. Add one under knives.';
  if (asked === undefined) {
    const [only, another] = knives;
    if (only && !another) return only;
    if (only)
      throw new UsageError(
        `There are several: say which with --name. There are ${listWords(
          knives.map((k) => k.cut),
          'and',
        )}.`,
      );
    return [...names.values()].find((why) => why !== null)!;
  }
  const found = knives.find((k) => k.cut === asked) ?? knives.find((k) => k.knife === asked);
  if (found) return found;
  const why = names.get(asked);
  if (why) return why;
  const near = findNearest(asked, known);
  throw new UsageError(
    `--name ${asked}: there is no such ${what}. ${near ? `Did you mean ${near}? ` : ''}There are ${listWords(known, 'and')}.`,
  );
}

/** Drawing and exchange are loaded only when they are needed. */
async function write(file: KnifeFile, knife: KnifeReport, part: Part, format: Format): Promise<string> {
  const { units, title } = file;
  if (format === '.svg') return (await import('@fielded/render')).drawKnife({ knife, units, title, part });
  const exchange = await import('@fielded/exchange');
  const limiter = knife.limiter;
  const { outline, ordinates } = part === 'limiter' && limiter !== null ? limiter : knife;
  if (format === '.csv') {
    const inUnit = (mm: number) => mm / toMillimetres(1, units);
    return exchange.writeCsv({
      headings: [`s (${units})`, `t (${units})`],
      rows: ordinates.map(({ s, t }) => [inUnit(s), inUnit(t)]),
    });
  }
  return exchange.writeDxf([{ name: part.toUpperCase(), chains: readReportPath(outline) }]);
}
