// Writes one of two long texts to a file again and again until it is killed: see nothing-lost.test.ts.
const [, , writer, path] = process.argv;
const { writeWhole } = await import(writer);
const texts = ['old', 'new'].map((word) => `${word}\n`.repeat(200_000));
for (let i = 0; ; i++) {
  writeWhole(path, texts[i % 2]);
  if (i === 0) process.stdout.write('writing\n');
}
