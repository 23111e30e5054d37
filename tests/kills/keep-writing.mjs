// Writes one of two files' bytes to a path in turn until it is killed, by the command's own writer: see kill-writing.ts.
import fs, { readFileSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const [, , writer, path, ...wholes] = process.argv;
const clock = new Int32Array(new SharedArrayBuffer(4));

/** Rests for up to so many milliseconds: a disk that is busy, so that a kill falls anywhere among the steps of writing. */
function rest(most) {
  Atomics.wait(clock, 0, 0, Math.random() * most);
}

const { writeFileSync } = fs;
fs.writeFileSync = (file, content) => {
  const bytes = Buffer.from(content);
  const step = Math.max(1, Math.ceil(bytes.length / 8));
  for (let at = 0; at < bytes.length; at += step) {
    writeFileSync(file, bytes.subarray(at, at + step));
    rest(0.3);
  }
};
for (const name of ['openSync', 'fchmodSync', 'fsyncSync', 'closeSync', 'renameSync']) {
  const own = fs[name];
  fs[name] = (...given) => {
    rest(0.3);
    return own(...given);
  };
}
const contents = wholes.map((whole) => readFileSync(whole));
syncBuiltinESMExports();
const { writeWhole } = await import(writer);
for (let i = 0; ; i++) {
  const refusal = writeWhole(path, contents[i % contents.length]);
  if (refusal !== null) throw new Error(refusal.refused);
  if (i === 0) process.stdout.write('writing\n');
}
