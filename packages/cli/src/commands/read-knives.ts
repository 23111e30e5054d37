import {
  answerKnives,
  findNearest,
  type Job,
  type KnifeReport,
  type Knives,
  type Problem,
  prepareJob,
  type ReadOptions,
  type ReadShop,
  readShop,
  reportShopKnives,
  type Shop,
  type Units,
  type Voice,
} from '@fielded/core';
import { isJob, isShop, JOB_FOR_SHOP } from '../files/is-shop.ts';
import { outlineLoader } from '../files/load-outline.ts';
import { readTextFile } from '../files/read-text.ts';
import type { Io } from '../io.ts';
import { listFaults, refusalLine } from '../report/list-faults.ts';
import { say, voiceOf } from '../words/say.ts';
import { inLanguage, readWithFiles } from './read-jobs.ts';

/** The knives of a job or of a shop, and what the file calls itself. */
export interface KnifeFile {
  readonly kind: 'job' | 'shop';
  readonly title: string;
  readonly units: Units;
  readonly knives: readonly KnifeReport[];
  readonly problems: readonly Problem[];
  /** Every name that could have been meant; and, of the knives asked for, why one cannot be computed. */
  readonly names: ReadonlyMap<string, string | null>;
}

/**
 * Reads a job or a shop file for its knives, or for the `asked` one alone; null when it cannot be read, which has then
 * been said on standard error.
 */
export async function openKnives(
  path: string,
  shopGiven: ReadOptions['shop'],
  asked: string | undefined,
  io: Io,
): Promise<KnifeFile | null> {
  const text = readTextFile(path);
  if (typeof text !== 'string') {
    await io.err(refusalLine(path, text));
    return null;
  }
  if (isShop(text)) {
    const shop = await openShopFile(path, text, io);
    return shop && ofShop(shop, asked, { ...voiceOf(io), units: shop.units });
  }
  const { job, faults } = await readWithFiles(path, text, shopGiven);
  if (job === null) {
    await io.err(listFaults(path, faults, shopGiven !== undefined, io.language));
    return null;
  }
  return ofJob(inLanguage(job, io), asked);
}

function ofJob(job: Job, asked: string | undefined): KnifeFile {
  const { reports, problems, refused } = answerKnives(prepareJob(job), asked) ?? NO_KNIVES;
  const names = new Map<string, string | null>(
    job.cuts.map(({ name, head }) => [
      name,
      head === undefined
        ? say('print.knife.cut-without-head', { cut: name }, job)
        : (refused.get(name)?.message ?? null),
    ]),
  );
  const { stickingHead, backEdge } = job.frame;
  for (const [name, head] of [
    ['cope', stickingHead],
    ['sticking', stickingHead],
    ['back edge', backEdge?.head],
  ] as const)
    if (
      head !== undefined &&
      !names.has(name) &&
      (asked === undefined || reports.some(({ cut }) => cut === name) || refused.has(name))
    )
      names.set(name, refused.get(name)?.message ?? null);
  return { kind: 'job', title: job.title, units: job.units, knives: reports, problems, names };
}

const NO_KNIVES: Knives = { reports: [], problems: [], refused: new Map() };

/** A shop file by itself; null when it cannot be read, which has then been said. */
export async function openShopFile(path: string, text: string, io: Io): Promise<Shop | null> {
  let named = false;
  const first = readShop(text, '', () => {
    named = true;
    return { refused: '', instead: '' };
  });
  const { shop, faults } = named ? await withDrawings(path, text) : first;
  if (shop !== null) return shop;
  await io.err(isJob(text) ? refusalLine(path, JOB_FOR_SHOP) : listFaults(path, faults, false, io.language));
  return null;
}

/** The shop again, with the drawings its knives name: what reads them is loaded only then. */
async function withDrawings(path: string, text: string): Promise<ReadShop> {
  const { readOutlineFile } = await import('@fielded/exchange');
  return readShop(text, '', outlineLoader(path, readOutlineFile));
}

function ofShop(shop: Shop, asked: string | undefined, voice: Voice): KnifeFile {
  const { reports, problems, refused } = reportShopKnives(shop, asked, voice.language);
  const heads = Object.keys(shop.heads);
  const names = new Map(
    Object.entries(shop.knives).map(([name, { head }]) => {
      if (head === undefined) return [name, say('print.knife.without-head', { knife: name }, voice)];
      if (Object.hasOwn(shop.heads, head)) return [name, refused.get(name)?.message ?? null];
      const near = findNearest(head, heads);
      return [
        name,
        near
          ? say('print.knife.unknown-head.near', { knife: name, head, near }, voice)
          : say('print.knife.unknown-head', { knife: name, head }, voice),
      ];
    }),
  );
  return {
    kind: 'shop',
    title: say('print.knives-of-shop', {}, voice),
    units: shop.units,
    knives: reports,
    problems,
    names,
  };
}
