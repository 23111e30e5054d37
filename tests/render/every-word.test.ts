// Every word on every drawing comes from the catalogues: in a made-up language of ringed letters nothing is left in plain ones.
import { readFileSync } from 'node:fs';
import { ENGLISH, evaluate, type Job, type Language, readShop } from '@fielded/core';
import { RENDER_ENGLISH, type Scene, scene } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { LONG_RUN } from '../support/trials.ts';
import { type Drawn, drawBoardPage, drawJob, drawKnives, everyJob } from './everything-drawn.ts';
import { inRings, namesInRings, notSaid, RINGED, textsIn } from './made-up-language.ts';

/** What is drawn of these uses nearly all words; all jobs are for the long run. */
const DAILY = ['bevel that wedges', 'loose with sticking', 'dry-winter', 'coped-frame', 'bead-on-edge', 'wardrobe'];
/** A second shaped door says no word that the first does not. */
const JOBS = Object.fromEntries(
  Object.entries(everyJob()).map(([name, job]) => [name, LONG_RUN ? job : { ...job, doors: job.doors.slice(0, 1) }]),
);
const NAMES = LONG_RUN ? Object.keys(JOBS) : DAILY;
/** Names that the drawings themselves were given, and those by which the frame's knives are asked for. */
const GIVEN = new Set(['Shop', 'May', 'Joinery', 'Knives', 'Our', 'knives', 'cope', 'sticking', 'back', 'edge']);

function plainWords(scenes: readonly Drawn[]): string[] {
  return scenes.flatMap(({ name, scene: drawn }) =>
    textsIn(drawn).flatMap((text) =>
      notSaid(text)
        .filter((word) => !GIVEN.has(word))
        .map((word) => `${name}: ${word} in “${text}”`),
    ),
  );
}

/** One drawing of a job of which all is drawn above. */
function drawJoint(name: string, language: Language): Scene {
  return scene(evaluate({ ...namesInRings(JOBS[name]!), language }), { view: 'joint' });
}

describe('in a language of ringed letters', () => {
  it.each(NAMES)('%s is drawn without a plain word, its figures with the decimal sign', (name) => {
    const drawn = drawJob(name, namesInRings(JOBS[name] as Job), RINGED);
    expect(plainWords(drawn)).toEqual([]);
    const texts = drawn.flatMap(({ scene: each }) => textsIn(each));
    expect(texts.filter((text) => /\d\.\d/.test(text))).toEqual([]);
    expect(texts.some((text) => /\d,\d/.test(text))).toBe(true);
  });

  it("a shop's knives and its board are too, apart from their names", () => {
    const { shop } = readShop(readFileSync('examples/shop/shop.yaml', 'utf8'));
    const { knives, heads } = shop!;
    const names = new Set([...Object.keys(knives), ...Object.keys(heads)].flatMap(notSaid));
    const left = drawKnives(RINGED).flatMap(({ scene: drawn }) => textsIn(drawn).flatMap(notSaid));
    expect([...new Set(left)].filter((word) => !GIVEN.has(word) && !names.has(word))).toEqual([]);
    expect(drawBoardPage(RINGED)).toContain(`<html lang="${inRings('en')}">`);
    expect(drawBoardPage(RINGED)).toContain(inRings('sample board'));
  });

  it('finds a word that was not said, and one that the language lacks', () => {
    const drawn = drawJoint('bevel that wedges', RINGED);
    const item = { kind: 'text', key: 'planted', role: 'text', x: 0, y: 0, text: 'Depth 9 mm', height: 2.5 } as const;
    const planted = { ...drawn, items: [...drawn.items, { ...item, anchor: 'start' as const, upright: false }] };
    expect(plainWords([{ name: 'planted', scene: planted }])).toEqual(['planted: Depth in “Depth 9 mm”']);
    const { 'mark.frame': _, ...sentences } = RINGED.sentences as Record<string, string>;
    const lacking = drawJoint('bevel that wedges', { ...RINGED, sentences });
    expect(plainWords([{ name: 'lacking', scene: lacking }]).join()).toContain('frame in “frame”');
  });

  it('figures have its decimal sign', () => {
    expect(textsIn(drawJoint('ogee and cove', RINGED))).toContain('6,4');
  });
});

it('no entry stands in two catalogues', () => {
  expect(Object.keys(RENDER_ENGLISH).filter((key) => Object.hasOwn(ENGLISH, key))).toEqual([]);
  const files = ['chart', 'edge', 'knife', 'list', 'note', 'plan', 'sample', 'sheet', 'view'];
  const keys = files.flatMap((file) => {
    const source = readFileSync(`packages/render/src/words/english/${file}.ts`, 'utf8');
    return [...source.matchAll(/^ {2}'?([\w. -]+?)'?:/gm)].map(([, key]) => key!);
  });
  expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  expect(new Set(keys)).toEqual(new Set(Object.keys(RENDER_ENGLISH)));
});
