// Tries many odd jobs and spoilt files: npm run fuzz -- --cases 100000 --shops 10000 --texts 20000 --drawings 20000 --settings 10000 --seed 1
import { parseArgs } from 'node:util';
import { fuzzDrawing } from './fuzz-drawings.ts';
import { fuzzJob } from './fuzz-jobs.ts';
import { fuzzSetting } from './fuzz-settings.ts';
import { fuzzShop } from './fuzz-shops.ts';
import { fuzzText, readStarts } from './fuzz-text.ts';

const { values } = parseArgs({
  options: {
    cases: { type: 'string', default: '20000' },
    shops: { type: 'string', default: '2000' },
    texts: { type: 'string', default: '5000' },
    drawings: { type: 'string', default: '5000' },
    settings: { type: 'string', default: '2000' },
    seed: { type: 'string', default: '1' },
  },
});
const seed = Number(values.seed);
const starts = readStarts();
let found = 0;
const tell = (findings: readonly { seed: number; what: string }[]) => {
  for (const { seed: at, what } of findings) if (found++ < 50) console.log(`seed ${at}: ${what}`);
};
const begun = performance.now();
for (let i = 0; i < Number(values.cases); i++) tell(fuzzJob(seed + i));
const jobsTook = performance.now() - begun;
for (let i = 0; i < Number(values.shops); i++) tell(fuzzShop(seed + i));
const shopsTook = performance.now() - begun - jobsTook;
for (let i = 0; i < Number(values.texts); i++) tell(fuzzText(seed + i, starts));
const textsTook = performance.now() - begun - jobsTook - shopsTook;
for (let i = 0; i < Number(values.drawings); i++) tell(fuzzDrawing(seed + i));
const drawingsTook = performance.now() - begun - jobsTook - shopsTook - textsTook;
const untilSettings = performance.now() - begun;
for (let i = 0; i < Number(values.settings); i++) tell(fuzzSetting(seed + i));
const settingsTook = performance.now() - begun - untilSettings;
console.log(
  `${values.cases} jobs in ${(jobsTook / 1000).toFixed(1)} s, ${values.shops} shops in ${(shopsTook / 1000).toFixed(1)} s, ${values.texts} files in ${(textsTook / 1000).toFixed(1)} s, ${values.drawings} drawings in ${(drawingsTook / 1000).toFixed(1)} s, ${values.settings} settings in ${(settingsTook / 1000).toFixed(1)} s, ${found} findings`,
);
process.exitCode = found > 0 ? 1 : 0;
