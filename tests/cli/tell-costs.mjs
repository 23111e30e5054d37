// Runs commands one after the other, each a line of JSON on standard input, and tells what each cost: status, seconds of
// processor time with those of the start, and the most memory so far. node tell-costs.mjs BUNDLE
import { readFileSync } from 'node:fs';
import { createInterface } from 'node:readline';

const { main } = await import(process.argv[2]);
const seconds = () => {
  const { userCPUTime, systemCPUTime } = process.resourceUsage();
  return (userCPUTime + systemCPUTime) / 1e6;
};
/** The most memory of this program alone: on Linux `maxRSS` also counts what started it, up to where that was left. */
const megabytes = () => {
  const { maxRSS } = process.resourceUsage();
  if (process.platform !== 'linux') return maxRSS / 1024;
  return Number(/^VmHWM:\s*(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8'))[1]) / 1024;
};
const start = seconds();
for await (const line of createInterface({ input: process.stdin })) {
  const before = seconds();
  const status = await main(JSON.parse(line));
  const cost = { status, seconds: start + seconds() - before, megabytes: megabytes() };
  process.stderr.write(`\n#${JSON.stringify(cost)}\n`);
}
