// Sections, tongues and fits of random cuts against sums and searches over thin strips: the cuts' depths are known here by the lines and
// circles that they were drawn by, and by nothing of the code.
import { describe, expect, it } from 'vitest';
import { fitTongue, judgeTongue, measureTongue } from '../../packages/core/src/joint/fit.ts';
import { findLostWood } from '../../packages/core/src/joint/lost-wood.ts';
import { traceOutline } from '../../packages/core/src/joint/outline.ts';
import { cutSection } from '../../packages/core/src/joint/section.ts';
import { grooveNeed, readTongue, thicknessAt, thicknessRange } from '../../packages/core/src/joint/tongue.ts';
import { faceEnd } from '../../packages/core/src/machining/face-end.ts';
import { reachAt } from '../../packages/core/src/machining/reach-at.ts';
import { line } from '../../packages/geometry/src/curve/curve.ts';
import { bow, type DrawnChain, drawChain } from '../support/drawn-chain.ts';
import { Random } from '../support/random.ts';

const THICKNESS = 22;
const WIDTH = 40;
const STRIPS = 4000;

interface Cut extends DrawnChain {
  readonly side: 'front' | 'back';
}

/** Three cuts: depths from the edge inwards to 0 at the face or a little above it; they overlap, and meet at times. */
function drawCuts(random: Random): Cut[] {
  return (['front', 'back', 'front'] as const).map((side, k) => {
    const deep = [11, 8, 12][k]!;
    const count = 3 + Math.floor(3 * random.unit());
    const reach = random.between(14, 34);
    const places = Array.from({ length: count + 1 }, (_, i): [number, number] => [
      i === 0 ? -0.5 : ((i + random.between(-0.3, 0.3)) / count) * reach,
      i === count ? -0.4 : deep * (1 - i / count) + random.between(-1.5, 1.5),
    ]);
    return { side, ...drawChain(random, places) };
  });
}

/** How deep the cuts of one side take the wood at x, mm. */
const depthAt = (cuts: readonly Cut[], side: Cut['side'], x: number) =>
  Math.max(0, ...cuts.filter((cut) => cut.side === side).map(({ heightOf }) => heightOf(x) ?? 0));

const random = new Random(71);
const jobs = Array.from({ length: 24 }, () => {
  const cuts = drawCuts(random);
  const section = cutSection(
    THICKNESS,
    WIDTH,
    cuts.map(({ side, chain }) => ({ side, edge: chain })),
  );
  const xs = Array.from({ length: STRIPS }, (_, k) => ((k + 0.5) / STRIPS) * WIDTH);
  const strips = xs.map((x) => ({
    x,
    top: THICKNESS - depthAt(cuts, 'front', x),
    bottom: Math.min(THICKNESS, depthAt(cuts, 'back', x)),
  }));
  return { cuts, section, strips, tongue: readTongue(section) };
});
const STRIP = WIDTH / STRIPS;

describe('the section of three cuts', () => {
  it('has the area and the moments of its strips, and so has what is gone', () => {
    for (const { section, strips } of jobs) {
      const wood = { area: 0, x: 0, y: 0 };
      for (const { x, top, bottom } of strips) {
        if (top <= bottom) continue;
        wood.area += (top - bottom) * STRIP;
        wood.x += x * (top - bottom) * STRIP;
        wood.y += ((top * top - bottom * bottom) / 2) * STRIP;
      }
      const whole = { area: WIDTH * THICKNESS, x: (WIDTH ** 2 * THICKNESS) / 2, y: (WIDTH * THICKNESS ** 2) / 2 };
      for (const key of ['area', 'x', 'y'] as const) {
        expect(Math.abs(section.wood[key] - wood[key]) / whole[key]).toBeLessThan(1e-5);
        expect(Math.abs(section.wood[key] + section.removed[key] - whole[key]) / whole[key]).toBeLessThan(1e-12);
      }
    }
  });

  it('says of each cut what it would take alone', () => {
    for (const { cuts, section, strips } of jobs)
      cuts.forEach((cut, k) => {
        const alone = strips.reduce((sum, { x }) => sum + Math.min(THICKNESS, depthAt([cut], cut.side, x)) * STRIP, 0);
        expect(Math.abs(section.takenAlone[k]! - alone)).toBeLessThan(0.01);
      });
  });

  it('is bounded by closed outlines that enclose it, in which no curve goes on from the one before', () => {
    for (const { section } of jobs) {
      let area = 0;
      for (const loop of traceOutline(section))
        loop.forEach((c, k) => {
          const next = loop[(k + 1) % loop.length]!;
          expect(Math.hypot(next.x0 - c.x1, next.y0 - c.y1)).toBeLessThan(1e-8);
          // Green: ½Σ(x₀y₁ − x₁y₀), and each arc's segment.
          const chord = Math.hypot(c.x1 - c.x0, c.y1 - c.y0);
          const angle = c.turn === 0 ? 0 : 2 * Math.asin(Math.min(1, chord / 2 / c.r));
          area += (c.x0 * c.y1 - c.x1 * c.y0 + c.turn * c.r * c.r * (angle - Math.sin(angle))) / 2;
          const same =
            c.turn !== 0 && c.turn === next.turn && c.cx === next.cx && c.cy === next.cy && k + 1 < loop.length;
          expect(same).toBe(false);
        });
      expect(Math.abs(area - section.wood.area)).toBeLessThan(1e-7);
    }
  });
});

it('an arc that the wood begins to overhang is one arc in the outline, and one surface of the tongue up to there', () => {
  // A hollow 10 deep at the edge and at 20 mm, 14 deep in the middle; from 12 to 20 mm there is wood above it again, down to 4.
  const hollow = bow(0, 10, 20, 10, -0.9);
  const edge = [hollow, line(20, 10, 20, 4), line(20, 4, 12, 4), line(12, 4, 12, 0)];
  const section = cutSection(THICKNESS, WIDTH, [{ side: 'front', edge }]);
  const arcs = traceOutline(section).flatMap((loop) => loop.filter(({ turn }) => turn !== 0));
  expect(arcs.map(({ x0, x1 }) => [x0, x1].sort((a, b) => a - b))).toEqual([[0, 20]]);
  expect(section.layered).toEqual([{ from: 12, to: 20 }]);
  // Outside, its front is the hollow up to 12 mm, and the face from there.
  const [deep] = readTongue(section, 11);
  expect(thicknessAt(deep!, 10)).toBeCloseTo(THICKNESS - hollow.cy - hollow.r, 9);
  expect(grooveNeed(readTongue(section), 15).front).toBe(THICKNESS);
});

it('two arcs of one radius that meet in a corner are two in the outline', () => {
  const edge = [bow(0, 10, 10, 10, -0.5), bow(10, 10, 20, 10, -0.5), line(20, 10, 20, 0)];
  const section = cutSection(THICKNESS, WIDTH, [{ side: 'front', edge }]);
  const arcs = traceOutline(section).flatMap((loop) => loop.filter(({ turn }) => turn !== 0));
  expect(arcs.map(({ x0, x1 }) => [x0, x1].sort((a, b) => a - b)).sort(([a], [b]) => a! - b!)).toEqual([
    [0, 10],
    [10, 20],
  ]);
});

describe('its tongue', () => {
  const DEPTHS = [0.7, 3, 8.3, 12, 21];
  /** Strips up to a depth, up to the first without wood. */
  const upTo = (strips: (typeof jobs)[number]['strips'], depth: number) =>
    strips.filter(({ x, top, bottom }) => x < depth && top > bottom);

  it('has the surfaces that the cuts leave, and none where no wood is', () => {
    for (const { tongue, strips } of jobs)
      for (const { x, top, bottom } of strips.filter((_, k) => k % 37 === 5)) {
        const stretch = tongue.find(({ x0, x1 }) => x > x0 && x < x1);
        if (Math.abs(top - bottom) < 1e-3) continue;
        expect(stretch !== undefined).toBe(top > bottom);
        if (stretch !== undefined) expect(thicknessAt(stretch, x)).toBeCloseTo(top - bottom, 9);
      }
  });

  it('is as thin, as thick, and asks as much of a groove as the strips say', () => {
    for (const { tongue, strips } of jobs)
      for (const depth of DEPTHS) {
        const within = upTo(strips, depth);
        if (within.length < 20) continue;
        const thick = within.map(({ top, bottom }) => top - bottom);
        const { thinnest, thickest } = thicknessRange(tongue, depth);
        const { front, back } = grooveNeed(tongue, depth);
        const pairs = [
          [-thinnest, -Math.min(...thick)],
          [thickest, Math.max(...thick)],
          [front, Math.max(...within.map(({ top }) => top))],
          [-back, -Math.min(...within.map(({ bottom }) => bottom))],
        ] as const;
        for (const [exact, sampled] of pairs) {
          expect(exact).toBeGreaterThan(sampled - 1e-9);
          expect(exact).toBeLessThan(sampled + 0.05);
        }
      }
  });

  it('goes into a groove as far as the groove that it needs is no wider, and not further', () => {
    const seen = new Set<string>();
    for (const { tongue, strips } of jobs)
      for (const width of [1, 5, 8, 11, 15])
        for (const swellGap of [1, 4]) {
          const frame = { thickness: THICKNESS, swellGap, groove: { width, depth: 12, setback: 6 } };
          const limits = { snug: 0.05, loose: 0.5, target: 0.2 };
          const { need, measures } = measureTongue(tongue, 12 - swellGap);
          const fit = fitTongue(tongue, need, frame, limits, THICKNESS, 25);
          // Further in, strip by strip, until the highest front less the lowest back is more than the groove.
          let [front, back, deepest] = [-Infinity, Infinity, 12];
          for (const { x, top, bottom } of strips) {
            if (x > 12 || top <= bottom) continue;
            [front, back] = [Math.max(front, top), Math.min(back, bottom)];
            if (front - back > width) {
              deepest = Math.max(0, x - STRIP / 2);
              break;
            }
          }
          seen.add(deepest === 12 ? 'whole' : deepest === 0 ? 'none' : 'part');
          expect(Math.abs(fit.deepestInsertion! - deepest)).toBeLessThan(2 * STRIP);
          // A film of 0.15 mm on both faces takes up 0.3 mm of the groove.
          const wider = { ...frame, groove: { ...frame.groove, width: width + 0.3 } };
          const coated = fitTongue(tongue, need, wider, limits, THICKNESS, 25, 0.15);
          expect(coated.deepestInsertion).toBeCloseTo(fit.deepestInsertion!, 6);
          expect(coated.clearance).toBeCloseTo(fit.clearance!, 9);
          expect(fit.verdict).toBe(judgeTongue(tongue, need, frame, limits));
          expect(measures.grooveNeeded! + fit.clearance!).toBeCloseTo(width, 9);
          if (fit.verdict === 'will-not-enter') {
            expect([fit.bottomGap, fit.visibleMargin]).toEqual([null, 25 - (12 - swellGap)]);
            continue;
          }
          const reached = Math.min(12 - swellGap, fit.deepestInsertion!);
          expect([fit.bottomGap, fit.visibleMargin]).toEqual([12 - reached, 25 - reached]);
          // Between its walls the panel floats by what it leaves of the groove, on either face alike.
          const asked = grooveNeed(tongue, Math.max(reached, 1e-6));
          const float = Math.max(0, width - (asked.front - asked.back));
          for (const { least, most } of [fit.frontFace!, fit.backFace!])
            expect(Math.abs(most - least - float)).toBeLessThan(1e-5);
          expect(Math.abs(fit.frontFace!.most - (THICKNESS - asked.front - 6))).toBeLessThan(1e-5);
          expect(Math.abs(fit.backFace!.most - (asked.back - (THICKNESS - 6 - width)))).toBeLessThan(1e-5);
        }
    expect([...seen].sort()).toEqual(['none', 'part', 'whole']);
  });
});

describe('one cut', () => {
  it('leaves the face, and reaches at each depth, as far in as any of its strips', () => {
    for (const { cuts, strips } of jobs)
      for (const { chain, heightOf } of cuts) {
        const farthest = (depth: number) =>
          Math.max(0, ...strips.filter(({ x }) => (heightOf(x) ?? -1) > depth).map(({ x }) => x));
        expect(Math.abs(faceEnd(chain)! - farthest(0))).toBeLessThan(STRIP);
        for (const depth of [0.3, 2.1, 4.4])
          expect(Math.abs(reachAt(chain, depth) - farthest(depth))).toBeLessThan(2 * STRIP);
      }
  });

  it('reaches at the depth of its land to the far end of it, and beyond its depth nowhere', () => {
    const land = [line(0, 3, 6, 3), line(6, 3, 6, 1), line(6, 1, 14, 1)];
    expect([1, 2, 3, 3.1].map((depth) => reachAt(land, depth))).toEqual([14, 6, 6, 0].map((x) => expect.closeTo(x, 9)));
    expect(reachAt(land.slice(0, 1), 3)).toBeCloseTo(6, 9);
  });

  it('loses a thin layer deep in the wood, and all between a hollow and the chord of it', () => {
    // A hundredth over 10 mm is twice what a drawing is read to.
    const thin = {
      drawn: [line(0, 10, 10, 10), line(10, 10, 10, 0)],
      swept: [line(0, 10.01, 10, 10.01), line(10, 10.01, 10, 0)],
    };
    const close = (pair: readonly number[]) => pair.map((x) => expect.closeTo(x, 9));
    expect(findLostWood(thin, THICKNESS, WIDTH)).toEqual({
      area: expect.closeTo(0.1, 9),
      fromEdge: close([0, 10]),
      below: close([10, 10.01]),
    });
    // Drawn 10 deep at both ends and 6 in the middle of 16 mm: radius 10, and a segment of r²(θ − sin θ)/2 with sin θ/2 = 0.8.
    const round = bow(0, 10, 16, 10, 2 * Math.asin(0.8));
    const half = Math.asin(0.8);
    const lost = findLostWood(
      { drawn: [round, line(16, 10, 16, 0)], swept: [line(0, 10, 16, 10), line(16, 10, 16, 0)] },
      THICKNESS,
      WIDTH,
    );
    expect(lost).toEqual({
      area: expect.closeTo(50 * (2 * half - Math.sin(2 * half)), 9),
      fromEdge: close([0, 16]),
      below: close([6, 10]),
    });
  });

  it('that its turning knife sweeps deeper than it is drawn loses the wood between the two', () => {
    let lost = 0;
    for (const { cuts, strips } of jobs) {
      const [drawn, , other] = cuts as [Cut, Cut, Cut];
      const swept = { ...drawn, chain: other.chain };
      const found = findLostWood({ drawn: drawn.chain, swept: swept.chain }, THICKNESS, WIDTH);
      const between = strips
        .map(({ x }) => ({ x, from: Math.max(0, drawn.heightOf(x) ?? 0), to: Math.max(0, other.heightOf(x) ?? 0) }))
        .filter(({ from, to }) => to - from > 1e-9);
      const area = between.reduce((sum, { from, to }) => sum + (to - from) * STRIP, 0);
      if (area < 1) continue;
      lost++;
      expect(Math.abs(found!.area - area)).toBeLessThan(0.01);
      expect(Math.abs(found!.fromEdge[0] - Math.min(...between.map(({ x }) => x)))).toBeLessThan(0.05);
      expect(Math.abs(found!.fromEdge[1] - Math.max(...between.map(({ x }) => x)))).toBeLessThan(0.05);
      // The box is read at both ends and in the middle of each strip: it never lies outside what is lost.
      expect(found!.below[0]).toBeGreaterThan(Math.min(...between.map(({ from }) => from)) - 0.05);
      expect(found!.below[1]).toBeLessThan(Math.max(...between.map(({ to }) => to)) + 0.05);
      expect(found!.below[1]).toBeGreaterThan(Math.max(...between.map(({ to }) => to)) - 2);
      expect(found!.below[0]).toBeLessThan(Math.min(...between.map(({ from }) => from)) + 2);
    }
    expect(lost).toBeGreaterThan(10);
  });
});
