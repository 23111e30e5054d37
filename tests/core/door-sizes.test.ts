import { expect, test } from 'vitest';
import { sizeDoor } from '../../packages/core/src/door/door.ts';

const door = { name: 'A', quantity: 1, width: 396, height: 716, stile: 60, rail: 60, across: 1, up: 1, muntin: 50 };

test('one panel fills the opening and both grooves', () => {
  expect(sizeDoor(door, 9)).toMatchObject({ opening: { width: 276, height: 596 }, panel: { width: 294, height: 614 } });
});

test('openings, muntins and frame add up to the door', () => {
  const { opening } = sizeDoor({ ...door, across: 3, up: 2 }, 9);
  expect(3 * opening.width + 2 * 50 + 2 * 60).toBeCloseTo(396, 12);
  expect(2 * opening.height + 50 + 2 * 60).toBeCloseTo(716, 12);
});
