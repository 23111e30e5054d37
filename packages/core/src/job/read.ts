import * as v from 'valibot';
import type { Units } from '../measure/length.ts';
import type { Fault } from '../problem.ts';
import type { Shop } from '../tooling/shop.ts';
import { completeJob, completeShop } from './complete-job.ts';
import { type Desk, openDesk } from './desk.ts';
import type { Job } from './job.ts';
import type { JobFile, Loose, ShopFile } from './job-file.ts';
import { findPlace } from './place.ts';
import { jobSchema, shopSchema } from './schema.ts';
import { explainIssues } from './schema-faults.ts';
import { readYaml, type TextFault, type Tree } from './yaml-tree.ts';

/** What the one who asks can get at: the core itself opens no files. */
export interface ReadOptions {
  /** The text of the shop file that a job names, or why there is none to be had, as a sentence without its full stop. */
  readonly loadShop?: (path: string) => string | { readonly refused: string; readonly instead: string };
  /** A shop file to use whatever the job names, and what it is called. */
  readonly shop?: { readonly text: string; readonly name: string };
}

/** A job ready to evaluate, or everything that stands in its way in the order of the file. */
export type ReadJob =
  | { readonly job: Job; readonly faults: readonly [] }
  | { readonly job: null; readonly faults: readonly Fault[] };

/** A shop, or everything that is wrong with its file. */
export type ReadShop =
  | { readonly shop: Shop; readonly faults: readonly [] }
  | { readonly shop: null; readonly faults: readonly Fault[] };

/**
 * Reads a job file, YAML 1.2 or JSON, and the shop file it names: millimetres, radians, everything filled in.
 *
 * All faults are listed at once, each with its line and column, what was read and what would be accepted; a fault in
 * the shop file carries that file's name. Bounded in time and memory for any text. Never throws.
 *
 * @example readJob('fielded: 1').faults.map((fault) => fault.code) // ['missing-key', 'missing-key', 'no-cuts']
 */
export function readJob(text: string, options: ReadOptions = {}): ReadJob {
  const tree = readYaml(text);
  const units = unitsOf(tree);
  const checked = checkSchema<JobFile>(tree, jobSchema(units));
  const faults = [...checked.faults];
  const shop = readShopOf(checked.file, tree, options);
  if (shop !== undefined && 'fault' in shop) faults.push(shop.fault);
  const found = shop !== undefined && 'shop' in shop ? (shop.shop ?? undefined) : undefined;
  const desk = openDeskOn(tree, units, faults);
  // A shop that could not be read would make every name in it unknown: one fault is enough.
  const broken = shop !== undefined && found === undefined;
  const job = completeJob(checked.file, found, broken ? silence(desk, ['unknown-knife', 'unknown-head']) : desk);
  const all = [...inOrder(faults, ''), ...(shop !== undefined && 'faults' in shop ? shop.faults : [])];
  if (all.length > 0 || job === undefined) return { job: null, faults: all };
  return { job, faults: [] };
}

/** Reads a shop file by itself; `name` is what its faults call it. */
export function readShop(text: string, name = ''): ReadShop {
  const tree = readYaml(text);
  const units = unitsOf(tree);
  const checked = checkSchema<ShopFile>(tree, shopSchema(units));
  const faults = [...checked.faults];
  const shop = completeShop(checked.file, openDeskOn(tree, units, faults));
  if (faults.length > 0 || shop === undefined) return { shop: null, faults: inOrder(faults, name) };
  return { shop, faults: [] };
}

function readShopOf(
  file: Loose<JobFile>,
  tree: Tree,
  options: ReadOptions,
): ReadShop | { readonly fault: TextFault } | undefined {
  if (options.shop) return readShop(options.shop.text, options.shop.name);
  if (file?.shop === undefined) return undefined;
  const loaded = options.loadShop?.(file.shop) ?? {
    refused: 'no other file can be opened from here',
    instead: 'Open the shop file as well, or take this line out',
  };
  if (typeof loaded === 'string') return readShop(loaded, file.shop);
  const what = `shop: ${file.shop}: ${loaded.refused}`;
  return {
    fault: { code: 'shop-unreadable', at: 'shop', ...findPlace(tree, 'shop', ''), what, instead: loaded.instead },
  };
}

/** Millimetres unless the file says inches; a faulty `units` is reported by the schema. */
function unitsOf(tree: Tree): Units {
  const units = (tree.value as { units?: unknown } | null)?.units;
  return units === 'in' ? 'in' : 'mm';
}

/** The file by its schema, with its faulty values struck out; nothing of it when it is not even YAML. */
function checkSchema<F>(
  tree: Tree,
  schema: v.GenericSchema<unknown, F>,
): { file: Loose<F>; faults: readonly TextFault[] } {
  if ((tree.value === null || tree.value === undefined) && tree.faults.length > 0)
    return { file: undefined as Loose<F>, faults: tree.faults };
  const result = v.safeParse(schema, tree.value);
  // What could not be read as YAML is not also called missing.
  const unread = new Set(
    tree.faults.filter(({ at, code }) => at !== '' && code !== 'duplicate-key').map(({ at }) => at),
  );
  const faults = [...tree.faults, ...explainIssues(result.issues ?? [], tree).filter(({ at }) => !unread.has(at))];
  return { file: strikeOut(result.output, result.issues ?? []) as Loose<F>, faults };
}

/** Sets every value that an issue is about to undefined, so that nothing is concluded from it. */
function strikeOut(output: unknown, issues: readonly v.BaseIssue<unknown>[]): unknown {
  for (const issue of issues) {
    const keys = (issue.path ?? []).map((item) => item.key as string | number);
    const last = keys.pop();
    if (last === undefined) return undefined;
    let holder = output as Record<string | number, unknown> | undefined;
    for (const key of keys) holder = holder?.[key] as typeof holder;
    if (typeof holder === 'object' && holder !== null && Object.hasOwn(holder, last)) holder[last] = undefined;
  }
  return output;
}

function openDeskOn(tree: Tree, units: Units, faults: TextFault[]): Desk {
  return openDesk(units, (code, at, what, instead) => {
    faults.push({ code, at, ...findPlace(tree, at, code), what, instead });
  });
}

function silence(desk: Desk, codes: readonly string[]): Desk {
  return {
    ...desk,
    report: (code, ...rest) => {
      if (!codes.includes(code)) desk.report(code, ...rest);
    },
  };
}

function inOrder(faults: readonly TextFault[], file: string): Fault[] {
  return [...faults]
    .sort((one, other) => one.line - other.line || one.column - other.column)
    .map(({ code, at, line, column, text, what, instead }) => {
      const message = `${what}. ${instead}.`;
      return { severity: 'error', code, at, message, file, line, column, received: text, expected: instead };
    });
}
