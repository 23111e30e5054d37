// Makes the scan of examples/traced-sample: a sample that never was, drawn with blur, noise and 1.4° of turn.
// npx tsx tests/support/make-sample-scan.ts FILE.png
import { writeFileSync } from 'node:fs';
import { encode } from 'fast-png';
import { drawScan, sampleOf } from './synthetic-scan.ts';

const front = (x: number) =>
  x < 10 ? 8.5 : x < 34 ? 8.5 - (5 - Math.sqrt(25 - Math.min(5, x - 10) ** 2)) - Math.max(0, x - 15) * 0.1 : 0;
const back = (x: number) => (x < 13 ? 5 : 0);
const { width, height, grey } = drawScan(sampleOf(front, back, 20, 62), { dpi: 300, turn: 1.4, dust: 12, margin: 5 });
const png = encode({ width, height, data: grey, channels: 1, depth: 8 });

// pHYs, before the pixels: 11811 to the metre are 300 to the inch.
const chunk = Buffer.alloc(21);
chunk.writeUInt32BE(9, 0);
chunk.write('pHYs', 4, 'latin1');
chunk.writeUInt32BE(11811, 8);
chunk.writeUInt32BE(11811, 12);
chunk[16] = 1;
let check = 0xffffffff;
for (const byte of chunk.subarray(4, 17)) {
  check ^= byte;
  for (let k = 0; k < 8; k++) check = check & 1 ? (check >>> 1) ^ 0xedb88320 : check >>> 1;
}
chunk.writeUInt32BE((check ^ 0xffffffff) >>> 0, 17);
writeFileSync(process.argv[2]!, Buffer.concat([png.subarray(0, 33), chunk, png.subarray(33)]));
