import {
  evaluate,
  type Job,
  ONE_JOINT,
  type ReadJob,
  type ReadOptions,
  type Refusal,
  type Report,
  readJob,
} from '@fielded/core';
import type { JobText } from '../files/find-jobs.ts';
import { isJob, isShop, JOB_FOR_SHOP } from '../files/is-shop.ts';
import { outlineLoader } from '../files/load-outline.ts';
import { shopLoader } from '../files/load-shop.ts';
import { readTextFile } from '../files/read-text.ts';
import type { Io } from '../io.ts';
import { listFaults, refusalLine } from '../report/list-faults.ts';

/** The shop file given with --shop, or undefined; null when it could not be read, which has then been said. */
export async function openShop(path: string | undefined, io: Io): Promise<ReadOptions['shop'] | null> {
  if (path === undefined) return undefined;
  const text = readTextFile(path);
  if (typeof text === 'string' && !isJob(text)) return { text, name: path };
  await io.err(refusalLine(path, typeof text === 'string' ? JOB_FOR_SHOP : text));
  return null;
}

/** The report on one job, nothing of whose spread is shown; null when it cannot be read, every fault of it then listed on standard error. */
export async function checkJob(job: JobText, shop: ReadOptions['shop'], io: Io): Promise<Report | null> {
  const read = await readOneJob(job, shop, io);
  return read === null ? null : evaluate(read, { simulation: ONE_JOINT });
}

const SHOP_FOR_JOB: Refusal = {
  refused: 'this is a shop file, not a job',
  instead:
    'Name a job here: it names the shop file with shop:, or --shop gives it one; fielded knife and fielded board read a shop file itself',
};

/** One job, read; null when it cannot be, every fault of it then listed on standard error. */
export async function readOneJob({ path, text }: JobText, shop: ReadOptions['shop'], io: Io): Promise<Job | null> {
  if (typeof text !== 'string') {
    await io.err(refusalLine(path, text));
    return null;
  }
  const { job, faults } = await readWithFiles(path, text, shop);
  if (job !== null) return inLanguage(job, io);
  if (isShop(text)) {
    await io.err(refusalLine(path, SHOP_FOR_JOB));
    return null;
  }
  await io.err(listFaults(path, faults, shop !== undefined, io.language));
  return null;
}

/** The job as it speaks the user's language. */
export function inLanguage(job: Job, { language }: Io): Job {
  return language === undefined ? job : { ...job, language };
}

/** A job with the files it names. What reads drawings is loaded only when the job turns out to name one. */
export async function readWithFiles(path: string, text: string, shop: ReadOptions['shop']): Promise<ReadJob> {
  let named = false;
  const options = { loadShop: shopLoader(path), ...(shop && { shop }) };
  const notYet = () => {
    named = true;
    return { refused: '', instead: '' };
  };
  const read = readJob(text, { ...options, loadOutline: notYet });
  if (!named) return read;
  const { readOutlineFile } = await import('@fielded/exchange');
  return readJob(text, { ...options, loadOutline: outlineLoader(path, readOutlineFile) });
}

/** 0 for a report without an error, 1 for one with, 2 for none. */
export function exitStatus(report: Report | null): number {
  if (report === null) return 2;
  return report.problems.some((problem) => problem.severity === 'error') ? 1 : 0;
}
