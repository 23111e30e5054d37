// Makes small faults in geometry, profiles, machining, joint and knife, one at a time, and counts how many of them the tests of figures
// catch: npm run mutate for the sixty that are kept, with -- --count N for N others, spread evenly, with
// --seed S for N drawn at random, --rooms FOLDER (once for each) for faults in other rooms, such as packages/core/src/setup, --tests
// FOLDER for only some of the tests, --only N for one fault, --list for the faults alone. What survives is printed by file and line, and is either a test that is missing or a slip that changes nothing.
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { drawFaults, keptFaults, listFaults, type SmallFault } from './faults.ts';
import { tryFaults } from './try-faults.ts';

const { values } = parseArgs({
  options: {
    count: { type: 'string' },
    seed: { type: 'string' },
    rooms: { type: 'string', multiple: true },
    tests: { type: 'string', multiple: true },
    only: { type: 'string', multiple: true },
    list: { type: 'boolean', default: false },
  },
});
const root = fileURLToPath(new URL('../..', import.meta.url));
/** The tests of figures, and of what is drawn and read by them; those that start other programs would only say the same again. */
const FOLDERS = ['core', 'reference', 'properties', 'regressions', 'render', 'exchange', 'cli'];
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

async function tryAll(): Promise<void> {
  const outcomes = await tryFaults(
    root,
    chosen.map(({ fault }) => fault),
    tests,
  );
  for (const [i, { fault, by }] of outcomes.entries())
    console.log(
      `${by === null ? 'SURVIVED' : 'caught  '}  ${chosen[i]!.number}  ${nameOf(fault)}  ${by ?? fault.becomes}`,
    );
  console.log(`${outcomes.filter(({ by }) => by !== null).length} of ${chosen.length} caught`);
}

if (values.list) for (const { fault, number } of chosen) console.log(`${number}  ${nameOf(fault)}`);
else await tryAll();
