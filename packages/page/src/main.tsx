import './style/page.css';
import { render } from 'preact';
import { claimDesk } from './desk/claim.ts';
import { createDesk } from './desk/create-desk.ts';
import type { Desk } from './desk/desk.ts';
import { asOpened, type Doc, isReadable } from './desk/doc.ts';
import { attempt, fetchPart } from './desk/fetch-part.ts';
import { createHolds } from './desk/holds.ts';
import { createKeeper, type Keeper } from './desk/keeper.ts';
import { recallHistory } from './desk/kept-history.ts';
import type { Notice } from './desk/notice.ts';
import { exampleFor } from './job/start.ts';
import { registerWorker } from './offline/register.ts';
import { App } from './shell/app.tsx';
import { roleStyles } from './stage/painter.ts';

const loadTakeIn = () => import('./files/take-in-address.ts');
const loadYaml = () => import('./files/yaml-reading.ts');

void start();

async function start(): Promise<void> {
  const roles = new CSSStyleSheet();
  roles.replaceSync(roleStyles());
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, roles];

  const isGiven = comesWithAddress();
  // Fetched while the page gets ready; if that fails, it is fetched again where it is needed.
  if (isGiven) for (const load of [loadTakeIn, loadYaml]) load().catch(() => {});

  const store = usable(() => localStorage);
  const session = usable(() => sessionStorage);
  const holds = createHolds(usable(() => navigator.locks) ?? undefined);
  const claim = await claimDesk(store, session, holds);
  const kept = claim.kept && isReadable(claim.kept.doc) ? claim.kept : null;
  const unreadable = claim.unreadable || (claim.kept !== null && kept === null);
  const desk = createDesk(kept?.doc ?? firstDoc());
  const keeper = createKeeper(claim, store, session, holds);
  if (kept) desk.lay(recallHistory(store, claim.id, kept.doc), kept.drafts);
  // What was kept and cannot be read stays where it is.
  if (claim.kept && !kept) await keeper.putAside();
  if (unreadable) desk.notice.value = UNREADABLE;
  else if (claim.copied)
    desk.notice.value = { kind: 'note', text: 'Another tab has this job open; here you work on a copy of it.' };
  const given = isGiven && (await takeInGiven(desk, keeper));
  keeper.watch(desk);
  // A link that is followed where the page is open already loads nothing anew.
  window.onhashchange = () => void (comesWithAddress() && takeInGiven(desk, keeper));
  const page = document.getElementById('page')!;
  page.replaceChildren();
  render(<App desk={desk} keeper={keeper} greet={claim.kept === null && !given} />, page);
  registerWorker(desk);
  followReader();
}

/** Takes up the styles for readers who have colours of their own, or enlarge the page several times, as soon as they do. */
function followReader(): void {
  const wanted = matchMedia('(forced-colors: active), (max-width: 599px) and (max-height: 420px)');
  const follow = () => {
    if (wanted.matches) fetchPart(() => import('./style/reader-styles.ts')).catch(() => {});
  };
  follow();
  wanted.onchange = follow;
}

const UNREADABLE: Notice = {
  kind: 'fault',
  text: 'The job kept here cannot be read by this version of the page. It stays as it is under Job, where it can be saved as a file.',
};

/** The example that a first visit opens on; unless it is changed it holds no work, and may be cleared. */
function firstDoc(): Doc {
  return asOpened({ data: exampleFor(navigator.language), source: null, fileName: 'job.yaml', shop: null });
}

/** Whether a job comes with the address: behind the #, or from the command that serves the page. */
function comesWithAddress(): boolean {
  return /^#(?:job=|file)/.test(location.hash);
}

/** Takes in a job that came with the address; the part that reads it is fetched only then. */
async function takeInGiven(desk: Desk, keeper: Keeper): Promise<boolean> {
  let taken = false;
  await attempt(desk, async () => {
    const { takeInAddress } = await fetchPart(loadTakeIn);
    taken = await takeInAddress(desk, keeper);
  });
  return taken;
}

/** A store that can be reached; a browser may forbid it. */
function usable<T>(get: () => T): T | null {
  try {
    return get();
  } catch {
    return null;
  }
}
