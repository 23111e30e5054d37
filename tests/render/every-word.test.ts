// Every word on every drawing comes from the catalogues: in a made-up language of ringed letters nothing is left in plain ones.
import { readFileSync } from 'node:fs';
import { ENGLISH, type Job, readShop } from '@fielded/core';
import { RENDER_ENGLISH, type Scene } from '@fielded/render';
import { describe, expect, it } from 'vitest';
import { LONG_RUN } from '../support/trials.ts';
import { drawBoardPage, drawJob, drawKnives, everyJob } from './everything-drawn.ts';
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

function plainWords(scenes: readonly { readonly name: string; readonly scene: Scene }[]): string[] {
  return scenes.flatMap(({ name, scene }) =>
    textsIn(scene).flatMap((text) =>
      notSaid(text)
        .filter((word) => !GIVEN.has(word))
        .map((word) => `${name}: ${word} in “${text}”`),
    ),
  );
}

describe('in a language of ringed letters', () => {
  it.each(NAMES)('%s is drawn without a plain word', (name) => {
    expect(plainWords(drawJob(name, namesInRings(JOBS[name] as Job), RINGED))).toEqual([]);
  });

  it("a shop's knives and its board are too, apart from their names", () => {
    const { shop } = readShop(readFileSync('examples/shop/shop.yaml', 'utf8'));
    const { knives, heads } = shop!;
    const names = new Set([...Object.keys(knives), ...Object.keys(heads)].flatMap(notSaid));
    const left = drawKnives(RINGED).flatMap(({ scene }) => textsIn(scene).flatMap(notSaid));
    expect([...new Set(left)].filter((word) => !GIVEN.has(word) && !names.has(word))).toEqual([]);
    expect(drawBoardPage(RINGED)).toContain(`<html lang="${inRings('en')}">`);
    expect(drawBoardPage(RINGED)).toContain(inRings('sample board'));
  });

  it('finds a word that was not said, and one that the language lacks', () => {
    const [first] = drawJob('planted', namesInRings(JOBS['bevel that wedges']!), RINGED);
    const { scene } = first!;
    const item = { kind: 'text', key: 'planted', role: 'text', x: 0, y: 0, text: 'Depth 9 mm', height: 2.5 } as const;
    const planted = { ...scene, items: [...scene.items, { ...item, anchor: 'start' as const, upright: false }] };
    expect(plainWords([{ name: 'planted', scene: planted }])).toEqual(['planted: Depth in “Depth 9 mm”']);
    const { 'mark.frame': _, ...sentences } = RINGED.sentences as Record<string, string>;
    const lacking = drawJob('lacking', namesInRings(JOBS['bevel that wedges']!), { ...RINGED, sentences });
    expect(plainWords(lacking).join()).toContain('frame in “frame”');
  });

  it('figures have its decimal sign', () => {
    const texts = drawJob('comma', namesInRings(JOBS['ogee and cove']!), RINGED).flatMap(({ scene }) => textsIn(scene));
    expect(texts.filter((text) => /\d\.\d/.test(text))).toEqual([]);
    expect(texts).toContain('6,4');
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
