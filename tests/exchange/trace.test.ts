import { crc32, deflateSync } from 'node:zlib';
import { encode as encodePng } from 'fast-png';
import { encode as encodeJpeg } from 'jpeg-js';
import { describe, expect, it, vi } from 'vitest';
import { evaluate, readJob } from '../../packages/core/src/index.ts';
import { readScan, type Traced, tracedJob, tracedSvg, traceScan } from '../../packages/exchange/src/index.ts';
import { radiusUncertainty } from '../../packages/exchange/src/scan/arcs.ts';
import { pathPoints } from '../support/path-points.ts';
import { type Depth, drawScan, type ScanSettings, sampleOf } from '../support/synthetic-scan.ts';
import { inLongRun } from '../support/trials.ts';

// Made scans of a million pixels are drawn pixel by pixel.
vi.setConfig({ testTimeout: 120_000 });

/** Land 11, an ogee of two equal arcs to 38 with a shoulder of 1.5, 9 deep; radii 26.175. */
const ogee: Depth = (x) => {
  if (x < 11) return 9;
  if (x >= 38) return 0;
  const [half, rise] = [13.5, 3.75];
  const r = (half * half + rise * rise) / (2 * rise);
  const u = x - 11;
  return u < half ? 9 - (r - Math.sqrt(r * r - u * u)) : 1.5 + (r - Math.sqrt(r * r - (27 - u) ** 2));
};
const cove: Depth = (x) => {
  if (x < 9) return 4.8;
  if (x >= 14) return 0;
  const r = (25 + 4.8 * 4.8) / 9.6;
  return 4.8 - (r - Math.sqrt(Math.max(0, r * r - (x - 9) ** 2)));
};
const bevel: Depth = (x) => (x < 30 ? 8 - (6 * x) / 30 : 0);
const plain: Depth = () => 0;

const sample = sampleOf(ogee, cove, 20, 70);
/** What is scanned at 600 dpi: a field and paper just wide enough, since every pixel takes its time. */
const short = sampleOf(ogee, cove, 20, 58);
const read = (settings: ScanSettings = {}, of = short): Traced => {
  const dpi = settings.dpi ?? 600;
  const traced = traceScan(drawScan(of, { margin: 3, ...settings }), [dpi, dpi]);
  if ('refused' in traced) throw new Error(traced.refused);
  return traced;
};
/** Turned, as several tests need it: drawn and traced once. */
const TURNED: ScanSettings = { turn: -3 };
let turned: { scan: ReturnType<typeof drawScan>; traced: Traced } | undefined;
const readTurned = () => {
  if (turned === undefined) {
    const scan = drawScan(sample, TURNED);
    const traced = traceScan(scan, [600, 600]);
    if ('refused' in traced) throw new Error(traced.refused);
    turned = { scan, traced };
  }
  return turned;
};

/** Greatest way, mm, from the traced outline to the drawn one, and from that back. */
function apart(path: string, depth: Depth, reach: number): number {
  const drawn: { x: number; y: number }[] = [];
  for (let x = 0; x < reach; x += 0.01) {
    // Where it is steep, closer together.
    const parts = Math.max(1, Math.ceil(Math.abs(depth(Math.min(x + 0.01, reach - 1e-9)) - depth(x)) / 0.01));
    for (let k = 0; k < parts; k++) {
      const at = Math.min(x + (0.01 * k) / parts, reach - 1e-9);
      drawn.push({ x: at, y: depth(at) });
    }
  }
  for (let y = depth(reach - 1e-9); y > 0; y -= 0.01) drawn.push({ x: reach, y });
  const traced = pathPoints(path, 0.01);
  const oneWay = (from: typeof drawn, to: typeof drawn, every: number) => {
    let most = 0;
    let at = 0;
    for (let i = 0; i < from.length; i += every) {
      let least = Number.POSITIVE_INFINITY;
      // Both run from the edge inwards: the nearest point is not far from the one before.
      const [first, last] = [Math.max(0, at - 250), Math.min(to.length, at + 250)];
      for (let k = first; k < last; k++) {
        const away = (from[i]!.x - to[k]!.x) ** 2 + (from[i]!.y - to[k]!.y) ** 2;
        if (away < least) {
          least = away;
          at = k;
        }
      }
      most = Math.max(most, least);
    }
    return Math.sqrt(most);
  };
  return Math.max(oneWay(traced, drawn, 10), oneWay(drawn, traced, 10));
}

describe('a scan at 600 dpi, blurred, with 2 % noise', () => {
  const daily: [string, ScanSettings][] = [
    ['turned by −3°', TURNED],
    ['both, and turned', { upsideDown: true, mirrored: true, turn: 3 }],
    ['with dust on the glass', { dust: 25 }],
    ['with a torn fibre', { fibre: true, margin: 6 }],
    ['light wood on black', { paper: 10, wood: 170 }],
  ];
  const others: [string, ScanSettings][] = [
    ['level', {}],
    ['turned by 3°', { turn: 3 }],
    ['mirrored', { mirrored: true, turn: 2 }],
    ['upside down', { upsideDown: true }],
    ['at 1200 dpi', { dpi: 1200, turn: 1 }],
  ];
  const isFollowed = (_: string, settings: ScanSettings) => {
    const traced = settings === TURNED ? readTurned().traced : read(settings, settings.fibre ? sample : short);
    expect(Math.abs(traced.thickness - 20)).toBeLessThan(0.02);
    expect(traced.front.reach).toBeGreaterThan(37.9);
    expect(apart(traced.front.path, ogee, 38)).toBeLessThan(0.015);
    expect(apart(traced.back!.path, cove, 14)).toBeLessThan(0.015);
    // A land, two arcs and a shoulder; a land and an arc.
    expect(traced.front.chain.map(({ turn }) => turn !== 0)).toEqual([false, true, true, false]);
    expect(traced.back!.chain.map(({ turn }) => turn !== 0)).toEqual([false, true]);
    expect(traced.front.deviation).toBeLessThan(0.03);
    expect(Math.abs(Math.abs(traced.turned) - Math.abs(settings.turn ?? 0))).toBeLessThan(0.05);
  };
  it.each(daily)(
    '%s: outlines within 0.015 mm, thickness within 0.02, in the lines and arcs they were drawn with',
    isFollowed,
  );
  inLongRun.each(others)(
    '%s: outlines within 0.015 mm, thickness within 0.02, in the lines and arcs they were drawn with',
    isFollowed,
  );

  it('a bevel without a back cut has no back', () => {
    const traced = read({ turn: 1 }, sampleOf(bevel, plain, 19, 50));
    expect(traced.back).toBeNull();
    expect(apart(traced.front.path, bevel, 30)).toBeLessThan(0.015);
  });

  it('what was drawn with no lines and arcs is followed within 0.06 mm', () => {
    const ellipse: Depth = (x) => (x < 10 ? 8 : x < 34 ? 8 - 7 * Math.sqrt(1 - ((34 - x) / 24) ** 2) : 0);
    const traced = read({ turn: 2 }, sampleOf(ellipse, plain, 20, 54));
    expect(apart(traced.front.path, ellipse, 34)).toBeLessThan(0.06);
  });

  it('says what radius an arc had, within four times its uncertainty', () => {
    const radius = (13.5 ** 2 + 3.75 ** 2) / 7.5;
    for (const arc of readTurned().traced.front.arcs)
      expect(Math.abs(arc.radius - radius)).toBeLessThan(4 * arc.uncertainty);
  });
});

/** A photo of a scan's kind: lit from one corner, falling off towards the others, with a steel rule as dark as the wood beside the sample. */
function asPhoto({ width, height, grey }: ReturnType<typeof drawScan>, dpi: number) {
  const below = Math.round((14 / 25.4) * dpi);
  const photo = { width, height: height + below, grey: new Uint8Array(width * (height + below)).fill(200) };
  photo.grey.set(grey);
  const [inset, top] = [Math.round((2 / 25.4) * dpi), height + Math.round((1 / 25.4) * dpi)];
  for (let y = top; y < photo.height - inset; y++) photo.grey.fill(90, y * width + inset, (y + 1) * width - inset);
  for (let y = 0; y < photo.height; y++)
    for (let x = 0; x < width; x++) {
      const [u, v] = [x / width, y / photo.height];
      const light = 1 - 0.5 * u * u - 0.25 * v;
      photo.grey[y * width + x]! *= light;
    }
  return photo;
}

it('a photo with 4 % noise, lit from a corner, with a rule larger than the sample beside it: within 0.1 mm', () => {
  const scan = drawScan(sampleOf(bevel, plain, 19, 50), {
    dpi: 400,
    turn: 2,
    noise: 0.04,
    blur: 1.3,
    paper: 200,
    wood: 95,
  });
  const traced = traceScan(asPhoto(scan, 400), [400, 400]);
  if ('refused' in traced) throw new Error(traced.refused);
  expect(Math.abs(traced.thickness - 19)).toBeLessThan(0.05);
  expect(traced.back).toBeNull();
  expect(Math.abs(traced.front.reach - 30)).toBeLessThan(0.1);
  expect(apart(traced.front.path, bevel, 30)).toBeLessThan(0.1);
});

describe('a sample with a defect, at 200 dpi', () => {
  const DPI = 200;
  const scan = drawScan(sample, { dpi: DPI });
  const pixels = (mm: number) => Math.round((mm * DPI) / 25.4);
  /** The picture from some mm across and down on, to its far corner or to `width` mm. */
  const crop = (left: number, top: number, width = Number.POSITIVE_INFINITY) => {
    const [x0, y0] = [pixels(left), pixels(top)];
    const wide = Math.min(scan.width - x0, width === Number.POSITIVE_INFINITY ? scan.width : pixels(width));
    const grey = new Uint8Array(wide * (scan.height - y0));
    for (let y = y0; y < scan.height; y++)
      grey.set(scan.grey.subarray(y * scan.width + x0, y * scan.width + x0 + wide), (y - y0) * wide);
    return { width: wide, height: scan.height - y0, grey };
  };

  // Paper is 6 mm wide all round: the worked edge lies at the left, the front on top.
  it.each([
    ['at its worked edge', crop(8, 0)],
    ['at its front', crop(0, 7)],
  ])('is refused where it runs off the picture %s: its sizes cannot be told', (_, image) => {
    expect((traceScan(image, [DPI, DPI]) as { refused?: string }).refused).toContain('runs off the picture');
  });

  it('is read where only its sawn end runs off the picture', () => {
    const traced = traceScan(crop(0, 0, 60), [DPI, DPI]) as Traced;
    expect(traced.thickness).toBeCloseTo(20, 1);
    expect(apart(traced.front.path, ogee, 38)).toBeLessThan(0.05);
  });

  it.each<[string, (x: number, y: number) => boolean]>([
    ['in from the edge, 12 mm deep', (x, y) => x < 18 && Math.abs(y - 18) < 0.15],
    ['down from the face, 8 mm deep', (x, y) => Math.abs(x - 52) < 0.15 && y < 14],
  ])('is read past a crack %s', (_, cracked) => {
    const grey = scan.grey.map((shade, i) =>
      cracked(((i % scan.width) * 25.4) / DPI, (Math.floor(i / scan.width) * 25.4) / DPI) ? 235 : shade,
    );
    const traced = traceScan({ ...scan, grey }, [DPI, DPI]) as Traced;
    expect(apart(traced.front.path, ogee, 38)).toBeLessThan(0.05);
    expect(apart(traced.back!.path, cove, 14)).toBeLessThan(0.05);
  });
});

it('half the width of a pixel at 300 dpi still gives 0.05 mm', () => {
  const traced = read({ dpi: 300 });
  expect(apart(traced.front.path, ogee, 38)).toBeLessThan(0.05);
  // The figures of the outline can be wrong by more: this check must be able to fail.
  expect(apart(traced.front.path, (x) => ogee(x) + 0.1, 38)).toBeGreaterThan(0.05);
});

it('the uncertainty of a radius is that of least squares on simulated arcs', () => {
  // By the covariance of the linearised fit, R 10, 60°, 0.05 px at 600 dpi: 0.0033 mm with 247 points.
  expect(radiusUncertainty(Math.PI / 6, 247, (0.05 * 25.4) / 600)).toBeCloseTo(0.0033, 3);
});

it('the job it writes reads without faults, and gives the sample again', () => {
  const { job, faults } = readJob(tracedJob(readTurned().traced, 'Kept sample'));
  expect(faults).toEqual([]);
  const report = evaluate(job!);
  expect(report.fit.verdict).toBe('sliding');
  expect(report.tongue.thicknessAtTip).toBeCloseTo(6.2, 1);
  expect(Math.abs(report.fit.frontFace!.most)).toBeLessThan(0.1);
  // Nothing in it leads back or dips by a hair's breadth, which no knife could cut.
  expect(report.problems.filter(({ severity }) => severity === 'error')).toEqual([]);
});

it('draws what it read over what it saw', () => {
  const { scan, traced } = readTurned();
  const svg = tracedSvg(scan, traced);
  expect(svg).toContain('href="data:image/png;base64,');
  expect(svg.match(/<path /g)).toHaveLength(2);
  // The tip of what was read lies on the wood's edge in the picture: its corner, 3 mm of paper in.
  const { front } = traced.seen;
  expect(front.length).toBeGreaterThan(1000);
  expect(front.filter(({ x, y }) => !(x > 0 && x < scan.width && y > 0 && y < scan.height))).toEqual([]);
});

describe('files', () => {
  const scan = drawScan(sample, { dpi: 200 });
  // Large enough to be read, and no larger.
  const { width, height, grey } = drawScan(sample, { dpi: 50 });
  const png = (channels: number, depth: 8 | 16) => {
    const all = new (depth === 8 ? Uint8Array : Uint16Array)(width * height * channels);
    for (let i = 0; i < all.length; i++) {
      const opaque = channels % 2 === 0 && i % channels === channels - 1;
      all[i] = (opaque ? 255 : grey[Math.floor(i / channels)]!) * (depth === 8 ? 1 : 257);
    }
    return encodePng({ width, height, data: all, channels, depth });
  };

  it.each([
    [1, 8],
    [2, 8],
    [3, 8],
    [4, 8],
    [1, 16],
    [3, 16],
  ] as const)('a PNG of %d channels and %d bits is the picture', (channels, depth) => {
    const read = readScan(png(channels, depth));
    if ('refused' in read) throw new Error(read.refused);
    const wrong = read.grey.reduce((most, shade, i) => Math.max(most, Math.abs(shade - grey[i]!)), 0);
    expect(wrong).toBeLessThanOrEqual(1);
  });

  it('a JPEG gives the same outline within 0.1 mm at 200 dpi', () => {
    const data = new Uint8Array(scan.grey.length * 4);
    for (let i = 0; i < scan.grey.length; i++)
      data.fill(scan.grey[i]!, 4 * i, 4 * i + 3).fill(255, 4 * i + 3, 4 * i + 4);
    const read = readScan(encodeJpeg({ width: scan.width, height: scan.height, data }, 92).data);
    if ('refused' in read) throw new Error(read.refused);
    const traced = traceScan(read, [200, 200]) as Traced;
    expect(apart(traced.front.path, ogee, 38)).toBeLessThan(0.1);
  });

  it('takes the density from the file', () => {
    const bytes = png(1, 8);
    // pHYs before IDAT: 23622 pixels to the metre are 600 to the inch; its checksum is not asked for.
    const chunk = new Uint8Array(21);
    const view = new DataView(chunk.buffer);
    view.setUint32(0, 9);
    chunk.set([0x70, 0x48, 0x59, 0x73], 4);
    view.setUint32(8, 23622);
    view.setUint32(12, 23622);
    chunk[16] = 1;
    view.setUint32(17, crc32(chunk.subarray(4, 17)));
    const read = readScan(new Uint8Array([...bytes.subarray(0, 33), ...chunk, ...bytes.subarray(33)]));
    expect(read).toMatchObject({ dpi: [600, 600] });
    // 2835 are 72: what a camera or a program writes that knows of no scale.
    view.setUint32(8, 2835);
    view.setUint32(12, 2835);
    expect(readScan(new Uint8Array([...bytes.subarray(0, 33), ...chunk, ...bytes.subarray(33)]))).toMatchObject({
      dpi: null,
    });
  });

  it('damaged, enormous and lying files are refused in words', () => {
    const refused = (bytes: Uint8Array) => (readScan(bytes) as { refused?: string }).refused ?? 'read';
    const good = png(1, 8);
    const lying = good.slice();
    new DataView(lying.buffer).setUint32(16, 60_000);
    new DataView(lying.buffer).setUint32(20, 60_000);
    expect(refused(lying)).toContain('million pixels');
    const taller = good.slice();
    new DataView(taller.buffer).setUint32(20, height * 2);
    expect(refused(taller)).toContain('damaged');
    expect(refused(good.slice(0, good.length / 2))).toContain('damaged');
    expect(refused(new Uint8Array([0xff, 0xd8, 0xff, 0xd9]))).toContain('neither');
    expect(refused(new TextEncoder().encode('fielded: 1'))).toContain('neither');
    expect(refused(new Uint8Array())).toContain('neither');
    // Any byte of a good file spoilt: read or refused, never thrown. Of a small one, whose heads and checks are more of it.
    const small = encodePng({ width, height: 8, data: grey.slice(0, 8 * width), channels: 1, depth: 8 });
    for (let i = 0; i < small.length; i += Math.ceil(small.length / 60)) {
      const spoilt = small.slice();
      spoilt[i]! ^= 0x5a;
      expect(() => readScan(spoilt)).not.toThrow();
    }
  });

  it('a progressive JPEG is read up to 10 million pixels: it takes 30 bytes for each', () => {
    // Its header alone: SOF2 of 8 bits, one component (ITU-T T.81 B.2.2).
    const progressive = (high: number, wide: number) =>
      new Uint8Array([
        0xff,
        0xd8,
        0xff,
        0xc2,
        0,
        11,
        8,
        high >> 8,
        high & 255,
        wide >> 8,
        wide & 255,
        1,
        1,
        0x11,
        0,
        0xff,
        0xd9,
      ]);
    const refused = (bytes: Uint8Array) => (readScan(bytes) as { refused?: string }).refused;
    expect(refused(progressive(7016, 4960))).toBe(
      'this JPEG is progressive, and up to 10 million pixels of those are read',
    );
    expect(refused(progressive(3000, 3000))).toContain('damaged');
  });

  it('pictures that unpack to more than they say are refused before they are unpacked', () => {
    const refused = (bytes: Uint8Array) => (readScan(bytes) as { refused?: string }).refused;
    const header = (side: number, depth: number, type: number) => {
      const data = new Uint8Array(13);
      new DataView(data.buffer).setUint32(0, side);
      new DataView(data.buffer).setUint32(4, side);
      data.set([depth, type], 8);
      return pngChunk('IHDR', data);
    };
    const packed = deflateSync(new Uint8Array(100_000_000), { level: 1 });
    const signature = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    const end = pngChunk('IEND', new Uint8Array());
    const pixels = pngChunk('IDAT', deflateSync(new Uint8Array(100 * 101)));
    const made = (...parts: Uint8Array[]) => new Uint8Array(Buffer.concat([signature, ...parts, end]));
    const before = process.memoryUsage().rss;
    expect(refused(made(header(100, 8, 0), pngChunk('IDAT', packed)))).toContain('damaged');
    // A profile that is a bomb, and a second header, are left unread.
    const profile = pngChunk('iCCP', new Uint8Array(Buffer.concat([Buffer.from('a\0\0'), packed])));
    expect(refused(made(header(100, 8, 0), profile, pixels))).toBeUndefined();
    expect(readScan(made(header(100, 8, 0), header(30_000, 8, 0), pixels))).toMatchObject({ width: 100, height: 100 });
    expect((process.memoryUsage().rss - before) / 1e6, 'megabytes more').toBeLessThan(60);
    expect(refused(made(header(8000, 16, 6), pixels))).toBe(
      'the picture takes 512 MB unpacked, and up to 145 MB are read',
    );
  });

  it('pictures without a sample are refused in words', () => {
    const refused = (image: { width: number; height: number; grey: Uint8Array }) =>
      (traceScan(image, [600, 600]) as { refused?: string }).refused;
    const blank = (shade: number) => ({ width: 400, height: 300, grey: new Uint8Array(120_000).fill(shade) });
    expect(refused(blank(255))).toBeDefined();
    expect(refused(blank(0))).toBeDefined();
    const noise = blank(0);
    noise.grey.forEach((_, i) => {
      noise.grey[i] = (i * 7919) % 251;
    });
    expect(refused(noise)).toBeDefined();
    expect(refused(drawScan(sampleOf(plain, plain, 20, 60), { dpi: 150 }))).toContain('as thick as its field');
    expect((traceScan(scan, [30, 30]) as { refused: string }).refused).toContain('pixels to the inch');
  });
});

/** A part of a PNG: length, name, data, check. */
function pngChunk(name: string, data: Uint8Array): Uint8Array {
  const chunk = new Uint8Array(data.length + 12);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, data.length);
  chunk.set(new TextEncoder().encode(name), 4);
  chunk.set(data, 8);
  view.setUint32(data.length + 8, crc32(chunk.subarray(4, data.length + 8)));
  return chunk;
}
