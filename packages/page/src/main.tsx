import './style/page.css';
import './style/sheet.css';
import './style/sizes.css';
import './style/print.css';
import { render } from 'preact';
import { claimDesk } from './desk/claim.ts';
import { createDesk, type Desk } from './desk/desk.ts';
import type { Doc } from './desk/doc.ts';
import { createKeeper } from './desk/keeper.ts';
import { EXAMPLE } from './job/start.ts';
import { registerWorker } from './offline/register.ts';
import { App } from './shell/app.tsx';
import { roleStyles } from './stage/painter.ts';

const FIRST: Doc = { data: EXAMPLE, source: null, fileName: 'job.yaml', shop: null };

void start();

async function start(): Promise<void> {
  const roles = new CSSStyleSheet();
  roles.replaceSync(roleStyles());
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, roles];

  const store = usable(() => localStorage);
  const session = usable(() => sessionStorage);
  const claim =
    store && session
      ? await claimDesk(store, session, navigator.locks)
      : { id: crypto.randomUUID(), kept: null, copied: false };
  const kept = claim.kept && layDesk(claim.kept.doc);
  const desk = kept ?? createDesk(FIRST);
  if (kept) kept.drafts.value = claim.kept?.drafts ?? {};
  if (claim.copied)
    desk.notice.value = { kind: 'note', text: 'Another tab has this job open; here you work on a copy of it.' };
  const keeper = createKeeper(claim, store, session, navigator.locks);
  // What was kept and cannot be read stays where it is.
  if (claim.kept && !kept) await keeper.putAside();
  const given = /^#(?:job=|file)/.test(location.hash) && (await takeInGiven(desk, () => keeper.putAside()));
  keeper.watch(desk);
  const page = document.getElementById('page')!;
  page.replaceChildren();
  render(<App desk={desk} keeper={keeper} greet={claim.kept === null && !given} />, page);
  registerWorker(desk);
  void import('./style/fonts.css');
}

/** A job that came with the address: the part that reads it is fetched only then. */
async function takeInGiven(desk: Desk, putAside: () => Promise<void>): Promise<boolean> {
  const { takeInAddress } = await import('./files/take-in-address.ts');
  return takeInAddress(desk, putAside);
}

/** The desk with a kept job on it; null where that cannot be read. */
function layDesk(doc: Doc): Desk | null {
  try {
    return createDesk(doc);
  } catch {
    return null;
  }
}

/** A store that can be reached; a browser may forbid it. */
function usable(get: () => Storage): Storage | null {
  try {
    return get();
  } catch {
    return null;
  }
}
