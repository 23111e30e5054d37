// German, whose words are longer than English ones: every entry is there, and nothing that is drawn lies over anything else.
import { evaluate, type Language } from '@fielded/core';
import { RENDER_ENGLISH, scene } from '@fielded/render';
import { expect, it } from 'vitest';
import { trials } from '../support/trials.ts';
import { drawJob, drawKnives, everyJob } from './everything-drawn.ts';
import { JOBS } from './jobs-to-draw.ts';
import { layoutFaults } from './layout-faults.ts';
import { readGerman } from './read-german.ts';

const GERMAN = await readGerman();
const DAILY = ['loose with sticking', 'dry-winter', 'coped-frame', 'on edge and tilted'];
const ALL = everyJob();
const NAMES = trials(0, 1) === 1 ? Object.keys(ALL) : DAILY;

/** Names of panels in a blank stand on a white strip over its grain. */
const ON_WHITE = /\/panel \d+ words .* over line .*\/grain$/;

it('says every word of drawings', () => {
  expect(Object.keys(RENDER_ENGLISH).filter((key) => !Object.hasOwn(GERMAN.sentences, key))).toEqual([]);
});

it.each(NAMES)('of %s nothing lies over anything else', (name) => {
  const faults = drawJob(name, ALL[name]!, GERMAN).flatMap(({ name: what, scene: drawn }) =>
    layoutFaults(drawn)
      .filter((fault) => !ON_WHITE.test(fault))
      .map((fault) => `${what}: ${fault}`),
  );
  expect(faults).toEqual([]);
});

it('of orders for knives nothing does either', () => {
  expect(drawKnives(GERMAN).flatMap(({ scene: drawn }) => layoutFaults(drawn))).toEqual([]);
});

it.each([
  ['right to left', 'לשון', '{mm:length} :עומק {cut}', 'he'],
  ['in square letters', '榫舌', '{cut}的深度：{mm:length}', 'zh'],
])('a language that is written %s letters a section without faults', (_, tongue, depth, tag) => {
  const language: Language = {
    decimal: '.',
    sentences: {
      'mark.tongue': tongue,
      'mark.tip': tongue,
      'mark.stock': tongue,
      'label.depth': depth,
      'page.language': tag,
    },
  };
  const drawn = scene(evaluate({ ...JOBS['ogee and cove']!, language }), { view: 'section' });
  expect(layoutFaults(drawn)).toEqual([]);
  expect(JSON.stringify(drawn.items)).toContain(tongue);
});
