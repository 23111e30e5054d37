import { type DoorReport, findNearest, parseLength, type Report, type TemplatePart } from '@fielded/core';
import type { OfficePaper } from '@fielded/render';
import { type Command, defineCommand } from '../command.ts';
import { readTextFile } from '../files/read-text.ts';
import { type Io, safe } from '../io.ts';
import { remarkProblems } from '../report/list-problems.ts';
import { didYouMean, thereAre, UsageError, unsaid } from '../usage-error.ts';
import { say, voiceOf } from '../words/say.ts';
import { deliver } from './deliver.ts';
import { checkJob, exitStatus, openShop } from './read-jobs.ts';
import { checkPaper, FILE_ENDINGS, FORCE, LANGUAGE, output, PAPER, SHOP } from './shared-options.ts';

type Format = '.svg' | '.dxf' | '.pdf';

/** `fielded template`: the outline of a shaped door's rail, panel or field at full size, for a machine or on paper. */
export const template: Command = defineCommand(
  {
    summary: 'templates of shaped heads at full size: DXF, PDF, SVG',
    place: {
      name: 'JOB',
      least: 1,
      most: 1,
      needs: 'a job file with a shaped door',
      takes: 'one job at a time',
      endings: FILE_ENDINGS,
    },
    about: [
      "Writes the outline of one part of a door with a shaped head at full size: its top rail, its panel, or the panel's field. The panel's outline is what the bearing of its cut runs on; --bearing moves it for another one.",
    ],
    options: {
      door: { value: 'NAME', says: 'which door; the first with a shaped head, if not said' },
      part: {
        value: 'PART',
        says: 'panel, the default; rail, the top rail with its joints; or field',
        choices: ['panel', 'rail', 'field'],
      },
      bearing: {
        value: 'DIAMETER',
        says: "a bearing other than the cut's own: the panel's outline is moved so that it may run on the template",
      },
      cut: { value: 'NAME', says: 'which cut that bearing is for; the one that needs most room, if not said' },
      output: output(
        'by its ending: .dxf lines and true arcs in millimetres, .pdf on as many sheets as it takes, with register marks, .svg on one piece; without it, SVG goes to standard output',
      ),
      paper: PAPER,
      shop: SHOP,
      language: LANGUAGE,
      force: FORCE,
    },
    formats: ['.svg', '.dxf', '.pdf'],
    statuses: ['written', 'the job has an error, or no such door', 'an input could not be read'],
  },
  async ({ path, values, format }, io) => {
    const shop = await openShop(values.shop, io);
    if (shop === null) return 2;
    const report = await checkJob({ path, text: readTextFile(path) }, shop, io);
    return report === null ? 2 : writeTemplate(path, report, values, format, io);
  },
);

interface Asked {
  readonly door: string | undefined;
  readonly part: TemplatePart | undefined;
  readonly bearing: string | undefined;
  readonly cut: string | undefined;
  readonly output: string | undefined;
  readonly paper: OfficePaper | undefined;
  readonly force: boolean;
}

async function writeTemplate(path: string, report: Report, asked: Asked, format: Format, io: Io): Promise<number> {
  const { part = 'panel', paper } = asked;
  checkPaper(paper, asked.output !== undefined && format === '.pdf', ['.pdf']);
  const door = findDoor(report, asked.door);
  if (door === null) {
    await io.err(`${safe(path)}  ${say('print.template.no-head', {}, voiceOf(io))}\n`);
    return 1;
  }
  const bearing = readBearing(door, part, asked, report.units);
  const { makeTemplate } = await import('@fielded/render');
  const made = makeTemplate(report, door, part, bearing);
  if (made === null) {
    await io.err(`${safe(path)}  ${say(`print.template.nothing.${part}`, { door: door.name }, voiceOf(io))}\n`);
    return 1;
  }
  const written = await write(made, part, paper, format);
  if (!(await deliver(io, asked.output, written, asked.force))) return 2;
  await io.err(remarkProblems(report.problems, voiceOf(io)));
  return exitStatus(report);
}

/** The door asked for, or the first with a head; null where none has one. */
function findDoor({ doors = [] }: Report, asked: string | undefined): DoorReport | null {
  const shaped = doors.filter(({ head }) => head !== undefined);
  if (shaped.length === 0) return null;
  if (asked === undefined) return shaped[0]!;
  const found = shaped.find(({ name }) => name === asked);
  if (found) return found;
  const names = shaped.map(({ name }) => name);
  const near = findNearest(asked, names);
  throw new UsageError(unsaid('print.usage.shaped-door', { name: asked }), didYouMean(near), thereAre(names));
}

/** The bearing asked for, and the cut it is for: the one that needs most room, if not said. */
function readBearing(door: DoorReport, part: TemplatePart, { bearing, cut }: Asked, units: 'mm' | 'in') {
  if (bearing === undefined) {
    if (cut !== undefined) throw new UsageError(unsaid('print.usage.cut-of-bearing', {}));
    return undefined;
  }
  if (part !== 'panel') throw new UsageError(unsaid('print.usage.bearing-of-panel', { part }));
  const own = door.head?.bearings ?? [];
  if (own.length === 0) throw new UsageError(unsaid('print.usage.bearing-without-head', {}));
  const length = parseLength(bearing, units);
  if ('read' in length || !(length.mm > 0)) throw new UsageError(unsaid('print.usage.bearing', { bearing }));
  const names = own.map((each) => each.cut);
  if (cut !== undefined && !names.includes(cut))
    throw new UsageError(unsaid('print.usage.headless-cut', { name: cut }), thereAre(names));
  const most = own.reduce((one, other) => (other.diameter > one.diameter ? other : one));
  return { cut: cut ?? most.cut, diameter: length.mm };
}

async function write(
  template: import('@fielded/render').Template,
  part: TemplatePart,
  paper: OfficePaper | undefined,
  format: Format,
): Promise<string | Uint8Array> {
  if (format === '.dxf')
    return (await import('@fielded/exchange')).writeDxf([{ name: part.toUpperCase(), chains: [template.outline] }]);
  const { sceneToSvg, templateScene, templateSheets } = await import('@fielded/render');
  if (format === '.svg') return sceneToSvg(templateScene(template), { theme: 'print', bare: false });
  return (await import('../formats/pdf.ts')).writePdf(templateSheets(template, paper));
}
