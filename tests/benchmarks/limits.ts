import { figure, type Measured, OURS, rowOf } from './goals.ts';
import { type ReportPart, timeReportParts, timeSectionParts } from './warm-times.ts';
import { timeDragParts } from './whole-job-times.ts';

/** Why the goals that are hard to meet are so: in words that hold whether they were met or not, with the figures of the same run. */
export function explainLimits(measured: Measured): string {
  const { rows, warm, commands } = measured;
  const parts = timeReportParts();
  const called = (what: string) => warm.find((each) => each.what === what)!.ms;
  const part = (what: string) => parts.find((each) => each.what === what)!;
  const tried = part('one remedy tried out');
  const [fit, shown] = [part('tongue and fit'), part('section and cuts as path data')];
  const section = (pieces: number) => rowOf(rows, OURS, pieces).median;
  const fits = (pieces: number) => called(`evaluate ${pieces} pieces that fit, the whole report`);
  const short = (pieces: number) => called(`evaluate ${pieces} pieces that stop short, the whole report with advice`);
  const attempts = (pieces: number, each: number) => Math.round((short(pieces) - fits(pieces)) / each);
  const both = (value: (pieces: 12 | 500) => number) => `${figure(value(12))} and ${figure(value(500))}`;
  const times = (least: (pieces: 12 | 500) => number) => both((pieces) => least(pieces) / section(pieces));
  const ofParts = ({ twelve, many }: ReportPart, pieces: 12 | 500) => (pieces === 12 ? twelve : many);
  const each = (commands.thousand.ms - commands.check.ms) / 999;
  const warmOnce = called('read the first example') + called('evaluate the first example');
  return `## What sets the limits

${explainSection(measured)}

**A report of a job that fits.** Section, tongue and fit, and the outlines as text are what any report has. Together they come to
${times((n) => section(n) + ofParts(fit, n) + ofParts(shown, n))} times the section alone, at 12 and 500 pieces; the outlines' text alone, all places of every number
in it, to ${times((n) => ofParts(shown, n))} times. The section has become faster than the text that shows it, and a report is plain data: the text cannot be
left until somebody reads it. The faster the section becomes, the further these goals, which are in sections, move away. Tried and kept: text written a byte at a time in place of joined strings (three times as fast), depths
written without being turned over twice, the tongue measured once for its sizes and its fit and read without copies, outlines traced without copies. Tried and dropped: a
faster search for the deepest insertion (no gain to be seen), single characters joined in place of one decoding of the bytes (slower from 60 on).

**A report with advice.** No advice is given that was not tried out on the whole job, and a tongue that stops short has several ways to be
put right. A remedy is judged by its verdict first, for which its section is cut and its tongue read; of most nothing more is worked out. At 12 and 500 pieces that takes
${figure(tried.twelve)} and ${figure(tried.many)} ms, and the advice as long as ${attempts(12, tried.twelve)} and ${attempts(500, tried.many)} such verdicts: some eight are asked for, the rest goes into the
sizes that are tried, jobs with them written in, and words. Nothing of a remedy is put into words but what is given. Fewer would mean advice that was not tried.

${explainWholeJobs(measured)}

**A thousand jobs.** Each takes ${figure(each)} ms. Reading one takes ${figure(called('read the first example'))} ms, of which ${figure(called('its YAML alone, as plain data'))} ms go into the YAML library's words, tree and places;
evaluating it ${figure(called('evaluate the first example'))} ms, both warm. A process of a thousand jobs is never warm: it takes ${figure(each / warmOnce)} times as long for each, file and JSON with it, and most of that is
code that the machine has not translated yet; files, their search and JSON took a tenth when it was looked into, cleaning up memory an eighth. Translating
earlier or later, and more room for memory, made no difference to be seen. A second reader for plain files would be
faster, and a second place for YAML to be misread: it was not written.

Parts of a report, ms:

| part | 12 pieces | 500 pieces |
| --- | ---: | ---: |
${parts.map(({ what, twelve, many }) => `| ${what} | ${figure(twelve)} | ${figure(many)} |`).join('\n')}
| the whole report of a job that fits | ${figure(fits(12))} | ${figure(fits(500))} |
`;
}

/** Where the time of a small section goes, and what that leaves of the lead. */
function explainSection({ rows }: Measured): string {
  const { whole, sweeps, strips } = timeSectionParts();
  const section = rowOf(rows, OURS, 12).median;
  return `**A small section.** At 12 pieces a section takes ${figure(section)} ms where nothing else has run before, as in the first table, and ${figure(whole)} ms after all other calls of this page, with whose
kinds of jobs the code then has to reckon: ${figure(sweeps)} ms of that to set and sweep the cuts, ${figure(strips)} ms to cut the stock strip by strip and add up. Its pieces are few, so most of
it is what every section has: threads, strips, boundaries, and the lists that hold them. The rivals' times move by a third from run to run, and the lead with them. Tried and
kept: plain fields in place of private ones, loops in place of lists made over, lists emptied without setting their length (a third of the time together); what is timed is
the code as built, not its sources through a loader (another quarter).`;
}

/** Where the time of a drag and of a plan goes. */
function explainWholeJobs({ warm }: Measured): string {
  const called = (start: string) => warm.find(({ what }) => what.startsWith(start))!.ms;
  const { checked, made, told, headTried } = timeDragParts();
  return `**A drag with a shop, a season and a spread.** Of ${figure(called('the joint alone, 4 cuts'))} ms, ${figure(checked)} ms go into the check of the job as given by hand, ${figure(made)} ms into its four cuts,
which overlap: to tell what each finds gone, the section is cut once for each of them but the last; and ${figure(told)} ms into what is shown, mostly the outlines' text. Season and spread are not
worked out in a drag.

**A plan that tries every other head.** Where each cut can be made in its own head a plan takes ${figure(called('plan 4 cuts'))} ms, where others are tried for one of them ${figure(called('the same where one cut'))} ms. A head is held
against every machine first; that a knife for it could be ground is asked last and takes ${figure(headTried)} ms, since only what errors come from is worked out: the room, and the
clearance behind the whole edge, but no outline, ordinates or limiter.`;
}
