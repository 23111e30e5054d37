// Makes small faults in geometry, profiles, machining, joint and knife, one at a time, in copies of the project, and counts how many
// of them the tests of figures catch: npm run mutate for the sixty that are kept, with -- --count N for N others, spread evenly, with
// --seed S for N drawn at random, --rooms FOLDER (once for each) for faults in other rooms, such as packages/core/src/setup, --tests
// FOLDER for only some of the tests, --nearest N for the N test files nearest to each fault, --only N for one fault, --list for the
// faults alone. What survives is printed by file and line, and is either a test that is missing or a slip that changes nothing.
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { type Copy, makeCopy } from './copy.ts';
import { drawFaults, keptFaults, listFaults, type SmallFault } from './faults.ts';

const { values } = parseArgs({
  options: {
    count: { type: 'string' },
    seed: { type: 'string' },
    rooms: { type: 'string', multiple: true },
    tests: { type: 'string', multiple: true },
    only: { type: 'string', multiple: true },
    copies: { type: 'string', default: String(Math.min(2, availableParallelism())) },
    nearest: { type: 'string' },
    list: { type: 'boolean', default: false },
  },
});
const root = fileURLToPath(new URL('../..', import.meta.url));
/** The tests of figures, and of what is drawn and read by them; those that start other programs would only say the same again. */
const FOLDERS = ['core', 'reference', 'properties', 'regressions', 'render', 'exchange'];
const tests = values.tests ?? FOLDERS.map((name) => `tests/${name}`);
const faults = chooseFaults();
const numbered = faults.map((fault, i) => ({ fault, number: i + 1 }));
const chosen = numbered.filter(({ number }) => !values.only || values.only.includes(String(number)));

function chooseFaults(): SmallFault[] {
  const { count = '60', seed, rooms } = values;
  if (seed !== undefined) return drawFaults(root, Number(count), Number(seed), rooms);
  return values.count === undefined && !rooms ? keptFaults(root) : listFaults(root, Number(count), rooms);
}

const nameOf = ({ file, line, from, to }: SmallFault) => `${file}:${line}  ${from.trim()} -> ${to.trim()}`;

/** Tries faults in a copy, the next one of all that are left each time; how many were caught. */
async function tryFaults(copy: Copy, queue: typeof chosen): Promise<number> {
  let caught = 0;
  for (let next = queue.shift(); next; next = queue.shift()) {
    const { what, by, seconds } = await copy.tryFault(next.fault);
    if (what !== 'survived') caught++;
    const said = { caught: 'caught  ', endless: 'caught, without an end', survived: 'SURVIVED' }[what];
    console.log(`${said}  ${next.number}  ${nameOf(next.fault)}  ${seconds.toFixed(0)} s  ${by ?? ''}`);
  }
  return caught;
}

async function tryAll(): Promise<void> {
  const copies = Array.from({ length: Number(values.copies) }, () =>
    makeCopy(root, tests, values.nearest === undefined ? undefined : Number(values.nearest)),
  );
  try {
    const queue = [...chosen];
    const counts = await Promise.all(copies.map((copy) => tryFaults(copy, queue)));
    console.log(`${counts.reduce((sum, n) => sum + n, 0)} of ${chosen.length} caught`);
  } finally {
    for (const copy of copies) copy.remove();
  }
}

if (values.list) for (const { fault, number } of chosen) console.log(`${number}  ${nameOf(fault)}`);
else await tryAll();
