import {
  evaluate,
  findNearest,
  type KnifeReport,
  type Problem,
  type ReadOptions,
  type ReadShop,
  readFileData,
  readShop,
  reportShopKnives,
  type Shop,
  type Units,
} from '@fielded/core';
import { outlineLoader } from '../files/load-outline.ts';
import { readText } from '../files/read-text.ts';
import type { Io } from '../io.ts';
import { listFaults, refusalLine } from '../report/list-faults.ts';
import { readWithFiles } from './read-jobs.ts';

/** The knives of a job or of a shop, and what the file calls itself. */
export interface KnifeFile {
  readonly kind: 'job' | 'shop';
  readonly title: string;
  readonly units: Units;
  readonly knives: readonly KnifeReport[];
  readonly problems: readonly Problem[];
  /** Every name that could have been meant, also of knives that cannot be computed, and why those cannot. */
  readonly names: ReadonlyMap<string, string | null>;
}

/** Reads a job or a shop file for its knives; null when it cannot be read, which has then been said on standard error. */
export async function openKnives(path: string, shopGiven: ReadOptions['shop'], io: Io): Promise<KnifeFile | null> {
  const text = readText(path);
  if (typeof text !== 'string') {
    await io.err(refusalLine(path, text));
    return null;
  }
  if (isShop(text)) {
    const shop = await openShopFile(path, text, io);
    return shop && ofShop(shop);
  }
  const { job, faults } = await readWithFiles(path, text, shopGiven);
  if (job === null) {
    await io.err(listFaults(path, faults, shopGiven !== undefined));
    return null;
  }
  const report = evaluate(job);
  const knives = report.knives ?? [];
  const names = new Map(
    job.cuts.map(({ name, head }) => [
      name,
      head === undefined
        ? `The cut "${name}" names no head, and what to grind depends on it. Add head: to it.`
        : knives.some((knife) => knife.cut === name)
          ? null
          : unreached(name, report.problems),
    ]),
  );
  const problems = report.problems.filter((p) => knives.some((knife) => knife.warnings.includes(p)));
  return { kind: 'job', title: report.title, units: report.units, knives, problems, names };
}

/** A shop file by itself; null when it cannot be read, which has then been said. */
export async function openShopFile(path: string, text: string, io: Io): Promise<Shop | null> {
  let named = false;
  const first = readShop(text, '', () => {
    named = true;
    return { refused: '', instead: '' };
  });
  const { shop, faults } = named ? await withDrawings(path, text) : first;
  if (shop !== null) return shop;
  await io.err(listFaults(path, faults, false));
  return null;
}

/** The shop again, with the drawings its knives name: what reads them is loaded only then. */
async function withDrawings(path: string, text: string): Promise<ReadShop> {
  const { readOutlineFile } = await import('@fielded/exchange');
  return readShop(text, '', outlineLoader(path, readOutlineFile));
}

function ofShop(shop: Shop): KnifeFile {
  const { reports, problems } = reportShopKnives(shop);
  const heads = Object.keys(shop.heads);
  const names = new Map(
    Object.entries(shop.knives).map(([name, { head }]) => {
      if (reports.some((knife) => knife.cut === name)) return [name, null];
      if (head === undefined)
        return [name, `The knife ${name} names no head, and what to grind depends on it. Add head: to it.`];
      if (Object.hasOwn(shop.heads, head)) return [name, unreached(name, problems)];
      const near = findNearest(head, heads);
      return [
        name,
        `The knife ${name} is kept in the head ${head}, which the shop does not describe. ${near ? `Did you mean ${near}? ` : ''}Describe it under heads.`,
      ];
    }),
  );
  return { kind: 'shop', title: 'Knives of the shop', units: shop.units, knives: reports, problems, names };
}

/** Why a knife was not computed: the problem that says so. */
function unreached(name: string, problems: readonly Problem[]): string {
  const found = problems.find(
    (p) => p.at === `knives.${name}` || (p.code === 'face-never-reaches' && p.message.includes(` for the ${name}: `)),
  );
  return found?.message ?? `The knife for ${name} cannot be computed.`;
}

/** A file without cuts that speaks of knives, heads or machines; one that cannot be told is a job. */
function isShop(text: string): boolean {
  const { value } = readFileData(text);
  if (typeof value !== 'object' || value === null) return false;
  const has = (...keys: string[]) => keys.some((key) => Object.hasOwn(value, key));
  return has('knives', 'heads', 'machines', 'rules') && !has('cuts', 'panel', 'frame');
}
