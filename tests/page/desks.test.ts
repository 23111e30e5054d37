// What a browser keeps of the jobs: nothing that anyone has worked on goes, whatever the store does.
import { describe, expect, it } from 'vitest';
import { evaluate, readJobData } from '../../packages/core/src/index.ts';
import { claimDesk } from '../../packages/page/src/desk/claim.ts';
import { createDesk } from '../../packages/page/src/desk/create-desk.ts';
import { asOpened, type Doc, isReadable } from '../../packages/page/src/desk/doc.ts';
import { createHolds } from '../../packages/page/src/desk/holds.ts';
import { createKeeper } from '../../packages/page/src/desk/keeper.ts';
import { keepHistory, recallHistory } from '../../packages/page/src/desk/kept-history.ts';
import { keptJobs } from '../../packages/page/src/desk/kept-jobs.ts';
import { clearOldDesks, keepDesk, listDesks, notesKey, readDesk } from '../../packages/page/src/desk/storage.ts';
import { beginJob } from '../../packages/page/src/job/new-job.ts';
import { EXAMPLE, exampleFor, INCH_EXAMPLE } from '../../packages/page/src/job/start.ts';

/** A store as browsers have it, with room for so many letters. */
function createStore(room = { letters: Number.POSITIVE_INFINITY }): Storage {
  const held = new Map<string, string>();
  return {
    get length() {
      return held.size;
    },
    key: (index) => [...held.keys()][index] ?? null,
    getItem: (key) => held.get(key) ?? null,
    setItem(key, text) {
      if (lettersIn(this) - (held.get(key)?.length ?? -key.length) + text.length > room.letters)
        throw new DOMException('full', 'QuotaExceededError');
      held.set(key, text);
    },
    removeItem: (key) => void held.delete(key),
    clear: () => held.clear(),
  };
}

function lettersIn(store: Storage): number {
  const keys = Array.from({ length: store.length }, (_, i) => store.key(i)!);
  return keys.reduce((sum, key) => sum + key.length + store.getItem(key)!.length, 0);
}

/** A browser's locks, shared by its tabs. */
function createLocks() {
  const held = new Set<string>();
  return {
    held,
    request: (name: string, _: unknown, hold: (lock: unknown) => Promise<void> | undefined) => {
      if (held.has(name)) return Promise.resolve(hold(null));
      held.add(name);
      return Promise.resolve(hold({ name })).then(() => void held.delete(name));
    },
    query: async () => ({ held: [...held].map((name) => ({ name })) }),
  } as unknown as LockManager & { held: Set<string> };
}

const FILE: Doc = asOpened({ data: EXAMPLE, source: 'fielded: 1 # …', fileName: 'job.yaml', shop: null });
const FIRST: Doc = asOpened({ data: EXAMPLE, source: null, fileName: 'job.yaml', shop: null });

/** A tab that opens the page, perhaps with a file in its address. */
async function openTab(
  store: Storage | null,
  locks: LockManager | undefined,
  file: Doc | null = null,
  session = createStore(),
) {
  const holds = createHolds(locks);
  const claim = await claimDesk(store, session, holds);
  const kept = claim.kept && isReadable(claim.kept.doc) ? claim.kept : null;
  const desk = createDesk(kept?.doc ?? FIRST);
  if (kept) desk.lay(recallHistory(store, claim.id, kept.doc), kept.drafts);
  const keeper = createKeeper(claim, store, session, holds);
  if (claim.kept && !kept) await keeper.putAside();
  const laid = file && (await keeper.layFile(desk, file));
  keeper.watch(desk);
  await new Promise((settle) => setTimeout(settle, 0));
  return { desk, keeper, kept: keptJobs(keeper.shelf), claim, laid, session };
}

describe('the same file', () => {
  it('opened forty times makes one desk, and the work of other tabs and of before is there', async () => {
    const [store, locks] = [createStore(), createLocks()];
    const worker = await openTab(store, locks);
    worker.desk.change([['title', 'Worked on for days']]);
    for (let visit = 0; visit < 40; visit++) {
      await openTab(store, locks, FILE);
      // The tab is closed: its locks go with it.
      locks.held.clear();
    }
    const titles = listDesks(store).map(({ found }) =>
      found.kind === 'kept' ? JSON.stringify(found.kept.doc.data) : '',
    );
    expect(titles.length).toBe(2);
    expect(titles.some((data) => data.includes('Worked on for days'))).toBe(true);
  });

  it('changed in the page comes back with the change, and says so', async () => {
    const [store, locks] = [createStore(), createLocks()];
    const one = await openTab(store, locks, FILE);
    one.desk.change([['panel.thickness', 21]]);
    locks.held.clear();
    const two = await openTab(store, locks, FILE);
    expect(two.laid).toBe('changed');
    expect(two.desk.value('panel.thickness')).toBe(21);
  });

  it('is not shared with the tab that has it open', async () => {
    const [store, locks] = [createStore(), createLocks()];
    const one = await openTab(store, locks, FILE);
    one.desk.change([['panel.thickness', 21]]);
    const two = await openTab(store, locks, FILE);
    expect(two.laid).toBe('fresh');
    expect(two.desk.value('panel.thickness')).toBe(20);
    two.desk.change([['panel.thickness', 22]]);
    expect(listDesks(store).length).toBe(2);
  });
});

describe('old desks', () => {
  it('are cleared away only where they are as their files are and no tab has them open', async () => {
    const store = createStore();
    for (let i = 0; i < 60; i++) {
      const doc = i % 2 === 0 ? FILE : { ...FILE, data: { ...(EXAMPLE as object), title: `mine ${i}` } };
      keepDesk(store, `desk ${i}`, { version: 1, doc, drafts: {}, savedAt: i });
    }
    keepDesk(store, 'half typed', { version: 1, doc: FILE, drafts: { 'panel.thickness': '20 mm -' }, savedAt: 0 });
    clearOldDesks(store, new Set(['desk 0']));
    const left = new Set(listDesks(store).map(({ id }) => id));
    for (let i = 1; i < 60; i += 2) expect(left.has(`desk ${i}`)).toBe(true);
    expect(left.has('desk 0')).toBe(true);
    expect(left.has('half typed')).toBe(true);
    expect(left.has('desk 2')).toBe(false);
    clearOldDesks(store, null);
    expect(listDesks(store).length).toBe(left.size);
  });
});

describe('a desk that cannot be read', () => {
  it.each([
    ['torn off', '{"version":1,"doc":{"da'],
    ['of a newer version', JSON.stringify({ version: 2, doc: FILE, savedAt: 1 })],
    ['of other types', JSON.stringify({ version: 1, doc: { data: [], source: 4, fileName: null, shop: 'x' } })],
    ['no job', JSON.stringify({ version: 1, doc: { ...FILE, data: { fielded: 1 } }, drafts: {}, savedAt: 1 })],
  ])('%s stays as it is, and the page opens beside it', async (_, text) => {
    const [store, locks, session] = [createStore(), createLocks(), createStore()];
    store.setItem('fielded.desk.mine', text);
    session.setItem('fielded.desk', 'mine');
    const { desk, kept } = await openTab(store, locks, null, session);
    desk.change([['panel.thickness', 21]]);
    expect(store.getItem('fielded.desk.mine')).toBe(text);
    expect(kept.textOf('mine')).toBe(text);
    expect(kept.earlier().map(({ id }) => id)).toContain('mine');
  });

  it('is the whole job where only its drafts are of a wrong type', async () => {
    const [store, locks, session] = [createStore(), createLocks(), createStore()];
    const drafts = { 'panel.thickness': 7, 'frame.thickness': '2' };
    store.setItem('fielded.desk.mine', JSON.stringify({ version: 1, doc: FILE, drafts, savedAt: 'x' }));
    session.setItem('fielded.desk', 'mine');
    const { desk } = await openTab(store, locks, null, session);
    expect(desk.doc.value.source).toBe(FILE.source);
    expect(desk.drafts.value).toEqual({ 'frame.thickness': '2' });
    store.setItem('fielded.desk.mine', JSON.stringify({ version: 1, doc: FILE, drafts: 'no', savedAt: 1 }));
    expect(readDesk(store, 'mine')).toMatchObject({ kind: 'kept', kept: { drafts: {} } });
  });
});

describe('a store', () => {
  it('that throws at everything, or is not there, is said, and the page works', async () => {
    const throws = new Proxy({} as Storage, {
      get: () => {
        throw new DOMException('no', 'SecurityError');
      },
    });
    for (const store of [throws, null]) {
      const { desk } = await openTab(store, createLocks(), FILE, throws);
      expect(desk.saving.value).toBe('blocked');
      expect(desk.change([['panel.thickness', 21]])).toEqual([]);
      expect(desk.saving.value).toBe('blocked');
    }
  });

  it('that is full gives up steps of undo first, then says so and harms no other job', async () => {
    const room = { letters: Number.POSITIVE_INFINITY };
    const store = createStore(room);
    const { desk } = await openTab(store, createLocks());
    store.setItem('fielded.desk.other', JSON.stringify({ version: 1, doc: FILE, drafts: {}, savedAt: 1 }));
    store.setItem('fielded.past.other', 'x'.repeat(200));
    room.letters = lettersIn(store) + 50;
    desk.change([['title', 'y'.repeat(150)]]);
    expect(desk.saving.value).toBe('saved');
    expect(store.getItem('fielded.past.other')).toBeNull();
    desk.drafts.value = { 'panel.thickness': 'z'.repeat(400) };
    expect(desk.saving.value).toBe('full');
    expect(readDesk(store, 'other').kind).toBe('kept');
    desk.drafts.value = {};
    expect(desk.saving.value).toBe('saved');
  });

  it("without locks opens the tab's own desk after a reload, and shares no other that holds work", async () => {
    const store = createStore();
    const one = await openTab(store, undefined, FILE);
    one.desk.change([['panel.thickness', 21]]);
    const reloaded = await openTab(store, undefined, null, one.session);
    expect(reloaded.desk.value('panel.thickness')).toBe(21);
    const other = await openTab(store, undefined, FILE);
    expect(other.laid).toBe('fresh');
  });
});

describe('undo', () => {
  it('of a file opened in another unit shows each job in its own, and leaves a unit chosen for the same job alone', async () => {
    const { desk, keeper } = await openTab(createStore(), createLocks());
    const inches = asOpened({ data: INCH_EXAMPLE, source: 'fielded: 1 # in', fileName: 'in.yaml', shop: null });
    await keeper.layFile(desk, inches, true);
    expect(desk.units.value).toBe('in');
    desk.undo();
    expect(desk.units.value).toBe('mm');
    desk.redo();
    expect(desk.units.value).toBe('in');
    desk.undo();
    desk.units.value = 'in';
    desk.change([['panel.thickness', 21]]);
    desk.undo();
    expect(desk.units.value).toBe('in');
  });

  it('outlives a reload, with redo, shop and file; not where the job is another', () => {
    const store = createStore();
    const desk = createDesk(FILE);
    desk.change([['panel.thickness', 21]]);
    desk.change([['panel.thickness', 22]]);
    desk.change([['panel.thickness', 23]]);
    desk.undo();
    keepHistory(store, 'a', desk.history.value);
    const again = createDesk(desk.doc.value);
    again.lay(recallHistory(store, 'a', desk.doc.value));
    again.undo();
    expect(again.value('panel.thickness')).toBe(21);
    again.undo();
    expect(again.doc.value).toEqual(FILE);
    again.redo();
    again.redo();
    again.redo();
    expect(again.value('panel.thickness')).toBe(23);
    expect(recallHistory(store, 'a', FILE).past).toEqual([]);
    store.setItem('fielded.past.a', '{"of"');
    expect(recallHistory(store, 'a', FILE).past).toEqual([]);
  });

  it('keeps the last steps of very many within its room', () => {
    const store = createStore();
    const desk = createDesk(FILE);
    for (let i = 0; i < 300; i++) desk.change([['title', `${'x'.repeat(150)} ${i}`]]);
    keepHistory(store, 'a', desk.history.value);
    const { past } = recallHistory(store, 'a', desk.doc.value);
    expect(past.length).toBe(80);
    expect(past.at(-1)).toEqual(desk.history.value.past.at(-1));
    expect(store.getItem('fielded.past.a')!.length).toBeLessThanOrEqual(300_000);
  });
});

describe('a list of jobs', () => {
  it('renames, copies and deletes, and brings back what was deleted; not what another tab has open', async () => {
    const [store, locks] = [createStore(), createLocks()];
    const one = await openTab(store, locks, FILE);
    const two = await openTab(store, locks);
    const [job] = two.kept.earlier();
    expect(await two.kept.rename(job!.id, 'Other name')).toBe('open');
    expect((await two.kept.remove(job!.id)).done).toBe('open');
    await one.keeper.putAside();
    expect(await two.kept.rename(job!.id, 'Other name')).toBe('done');
    expect(two.kept.copy(job!.id)).toBe('done');
    const titles = () => two.kept.earlier().map(({ title }) => title);
    expect(titles()).toEqual(expect.arrayContaining(['Other name', 'Other name (copy)']));
    // What is noted beside a job goes and comes back with it.
    store.setItem(notesKey(job!.id), '{"ticks":["1 Set up"]}');
    const { restore } = await two.kept.remove(job!.id);
    expect(titles()).not.toContain('Other name');
    expect(store.getItem(notesKey(job!.id))).toBeNull();
    restore();
    expect(titles()).toContain('Other name');
    expect(store.getItem(notesKey(job!.id))).toBe('{"ticks":["1 Set up"]}');
    expect(await two.keeper.bringBack(two.desk, job!.id)).toBe('there');
    expect(two.desk.value('title')).toBe('Other name');
  });
});

describe('a start', () => {
  const fitOf = (data: typeof EXAMPLE) => {
    const { job, faults } = readJobData(data);
    expect(faults).toEqual([]);
    return evaluate(job!);
  };

  it.each([
    ['en-GB', EXAMPLE],
    ['de-DE', EXAMPLE],
    ['en-US', INCH_EXAMPLE],
    ['fr-CA', INCH_EXAMPLE],
  ] as const)('in %s opens on an example that fits without an error', (language, example) => {
    expect(exampleFor(language)).toBe(example);
    const report = fitOf(example);
    expect(report.fit.verdict).toBe('sliding');
    expect(report.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
  });

  it.each(['rebate', 'bevel', 'cove', 'ovolo', 'ogee'] as const)(
    'with a %s fits, flush or as proud as asked',
    (front) => {
      for (const units of ['mm', 'in'] as const)
        for (const back of ['none', 'rebate', 'bevel', 'cove', 'ovolo', 'ogee'] as const)
          for (const proud of [0, 1.5, -0.8])
            for (const [stock, width] of [
              [18, 6],
              [20, 6.4],
              [25.4, 6.35],
            ] as const) {
              const groove = { width, depth: 10, setback: 7 };
              const begun = beginJob({ title: 't', units, stock, frame: 25, groove, swellGap: 2, front, back, proud });
              if ('reason' in begun) throw new Error(`${back} ${proud} ${stock}: ${begun.reason}`);
              const { fit } = fitOf(begun.data);
              expect(fit.verdict).toBe('sliding');
              expect(fit.frontFace!.most).toBeCloseTo(begun.face, 2);
              if (back !== 'none') expect(begun.face).toBeCloseTo(proud, 6);
            }
    },
  );

  it.each([
    [{ stock: 6 }, 'stock'],
    [{ swellGap: 12 }, 'swellGap'],
    [{ frame: 10 }, 'groove'],
    [{ proud: -8 }, 'proud'],
    [{ stock: 14 }, 'back'],
  ] as const)('that cannot be made says why: %j', (odd, about) => {
    const plain = {
      title: 't',
      units: 'mm',
      stock: 20,
      frame: 22,
      swellGap: 2,
      front: 'ogee',
      back: 'cove',
      proud: 0,
    } as const;
    const groove = { width: 6, depth: 10, setback: 8 };
    expect(beginJob({ ...plain, groove, ...odd })).toEqual({ about, reason: expect.stringMatching(/\.$/) });
  });

  it('in inches is in fractions throughout', () => {
    const groove = { width: 6.35, depth: (25.4 * 7) / 16, setback: (25.4 * 9) / 32 };
    const begun = beginJob({
      ...{ title: 't', units: 'in', stock: 19.05, frame: (25.4 * 13) / 16, groove },
      ...{ swellGap: 25.4 / 16, front: 'ogee', back: 'cove', proud: 0 },
    });
    if ('reason' in begun) throw new Error(begun.reason);
    const lengths = [...JSON.stringify(begun.data).matchAll(/"(?:reach|depth|land|shoulder)":"?([^",}]+)/g)];
    expect(lengths.length).toBe(8);
    for (const [, length] of lengths) expect(length).toMatch(/^(?:\d+-)?\d+(?:\/(?:2|4|8|16|32|64))?$/);
  });
});
