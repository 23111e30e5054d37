import { expect, it } from 'vitest';
import { createDesk } from '../../packages/page/src/desk/create-desk.ts';
import type { Desk } from '../../packages/page/src/desk/desk.ts';
import { exampleFor } from '../../packages/page/src/job/start.ts';
import { addKnives } from '../../packages/page/src/panels/shop/add-knives.ts';

const openDesk = (knives?: object): Desk =>
  createDesk({
    data: exampleFor('en-GB'),
    source: null,
    fileName: 'job.yaml',
    shop:
      knives === undefined ? null : { name: 'shop.yaml', data: { fielded: 1, units: 'mm', knives } as never, text: '' },
  });
const knivesOf = (desk: Desk) => (desk.doc.value.shop!.data as { knives: Record<string, object> }).knives;
const told = (desk: Desk) => desk.notice.value?.text;

it('keeps a knife of the same name, puts the one of the job beside it, and says so by name', () => {
  const mine = { shape: 'ovolo', reach: 20, depth: 6 };
  const desk = openDesk({ raise: mine });
  addKnives(desk);
  const { raise, 'raise 2': added, ...others } = knivesOf(desk);
  expect(raise).toEqual(mine);
  expect(added).toMatchObject({ shape: 'ogee' });
  expect(Object.keys(others)).toEqual(['back relief']);
  expect(told(desk)).toBe('2 knives are in the shop: raise as raise 2, because another knife has that name already.');
});

it('is one step of undo, and none where every knife is there already', () => {
  const desk = openDesk({ old: { shape: 'ovolo', reach: 20, depth: 6 } });
  const before = desk.doc.value;
  addKnives(desk);
  addKnives(desk);
  expect(Object.keys(knivesOf(desk))).toEqual(['old', 'raise', 'back relief']);
  desk.changeShop(['knives', 'raise', 'kept'], 'rack 3');
  desk.undo();
  expect(Object.keys(knivesOf(desk))).toEqual(['old', 'raise', 'back relief']);
  desk.undo();
  expect(desk.doc.value).toBe(before);
  expect(desk.canUndo.value).toBe(false);
  desk.redo();
  expect(Object.keys(knivesOf(desk))).toHaveLength(3);
});

it('adds nothing the second time, whatever else has become known of the knives', () => {
  const desk = openDesk();
  addKnives(desk);
  expect(desk.changeShop(['knives', 'raise', 'kept'], 'rack 3')).toEqual([]);
  const before = desk.doc.value;
  addKnives(desk);
  expect(desk.doc.value).toBe(before);
  expect(told(desk)).toBe('2 knives are in the shop.');
  desk.change([['cuts[0].profile.depth', 7.9]]);
  addKnives(desk);
  addKnives(desk);
  expect(Object.keys(knivesOf(desk))).toEqual(['raise', 'back relief', 'raise 2']);
  desk.change([['cuts[0].profile.depth', 8.1]]);
  desk.change([['cuts[1].profile.depth', 4.9]]);
  addKnives(desk);
  expect(told(desk)).toBe(
    '2 knives are in the shop: raise as raise 3, back relief as back relief 2, because other knives have those names already.',
  );
});

it('says so where the job has no profile to keep', () => {
  const desk = openDesk({ mine: { shape: 'ovolo', reach: 20, depth: 6 } });
  const cut = { name: 'raise', side: 'front', knife: 'mine', run: 'under' };
  expect(desk.change([['cuts', [cut]]])).toEqual([]);
  addKnives(desk);
  expect(told(desk)).toBe('No cut of this job has a profile of its own to keep.');
});
