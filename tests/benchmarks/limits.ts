import { figure, type Measured, OURS, rowOf } from './goals.ts';
import type { ReportPart } from './warm-times.ts';

/** Why the goals that are hard to meet are so: in words, with the figures of the same run. */
export function explainLimits({ rows, warm, commands }: Measured, parts: readonly ReportPart[]): string {
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
  return `## What sets the limits

**A report of a job that fits.** Section, tongue and fit, and the outlines as text are what any report has. Together they come to
${times((n) => section(n) + ofParts(fit, n) + ofParts(shown, n))} times the section alone, at 12 and 500 pieces; the outlines' text alone, all places of every number
in it, to ${times((n) => ofParts(shown, n))} times. The section has become faster than the text that shows it, and a report is plain data: the text cannot be
left until somebody reads it. Tried and kept: text written a byte at a time in place of joined strings (three times as fast), depths
written without being turned over twice, the tongue measured once for its sizes and its fit, outlines traced without copies. Tried and dropped: a
faster search for the deepest insertion (no gain to be seen).

**A report with advice.** No advice is given that was not tried out on the whole job, and a tongue that stops short has several ways to be
put right. At 12 and 500 pieces the advice takes as long as ${attempts(12, tried.twelve)} and ${attempts(500, tried.many)} remedies tried out, each with a section, a tongue and a fit of its own
(${figure(tried.twelve)} and ${figure(tried.many)} ms). Nothing of them is put into words but what is given. Fewer would mean advice that was not tried.

**A thousand jobs.** Each takes ${figure(each)} ms. Reading one takes ${figure(called('read the first example'))} ms, of which ${figure(called('its YAML alone, as plain data'))} ms go into the YAML library's words, tree and places;
evaluating it ${figure(called('evaluate the first example'))} ms; the rest is the file, the check of what may stand in it, and JSON. A second reader for plain files would be
faster, and a second place for YAML to be misread: it was not written.

Parts of a report, ms:

| part | 12 pieces | 500 pieces |
| --- | ---: | ---: |
${parts.map(({ what, twelve, many }) => `| ${what} | ${figure(twelve)} | ${figure(many)} |`).join('\n')}
| the whole report of a job that fits | ${figure(fits(12))} | ${figure(fits(500))} |
`;
}
