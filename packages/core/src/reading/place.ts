import type { FaultCode } from '../problem/codes.ts';
import type { Place, Tree } from './tree.ts';

/**
 * Where to point for a fault at path `at`: at the key for an unknown key, at the value for anything that has one, and
 * at what should have held it for something missing.
 */
export function findPlace(tree: Tree, at: string, code: FaultCode): Place {
  const key = tree.keyPlaces.get(at);
  if (code === 'unknown-key' && key) return key;
  const value = tree.places.get(at);
  if (value) return value;
  const parent = at.replace(/(?:\.[^.[\]]+|\[\d+\]|^[^.[\]]+)$/, '');
  if (parent === at || parent === '') return { line: 1, column: 1, text: '' };
  const place = tree.keyPlaces.get(parent) ?? tree.places.get(parent);
  return place ? { ...place, text: '' } : findPlace(tree, parent, code);
}
