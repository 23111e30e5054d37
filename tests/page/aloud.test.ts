// How signs are spoken to those who do not see them.
import { expect, it } from 'vitest';
import { aloud } from '../../packages/page/src/words/aloud.ts';

it.each([
  ['goes in its full ≈23/64 in (0.3543 in).', 'goes in its full about 23/64 inches (0.3543).'],
  ['Thickness of the stock: 1-3/8 in', 'Thickness of the stock: 1 3/8 inches'],
  ['1-\u20603/8\u00a0in × 2 in', '1 3/8 inches by 2 inches'],
  ['Clearance: 0.2 mm', 'Clearance: 0.2 millimetres'],
  // Neither the word nor a sign that is spoken of is one.
  ['A sum with + − × ÷ goes in the field', 'A sum with + − × ÷ goes in the field'],
])('%s', (written, spoken) => {
  expect(aloud(written)).toBe(spoken);
});
