import { SPECIES_TABLE, type SpeciesRow } from './species-table.ts';

/** Something that has a radial figure (across the growth rings) and a tangential one (along them). */
interface TwoWays {
  readonly radial: number;
  readonly tangential: number;
}

/** A wood ready to compute with: both kinds of figures filled in, and where they came from. */
export interface Species {
  readonly name: string;
  /** Change per 1 % of moisture as a part of the size, Table 13-5, for 6 to 14 %. */
  readonly coefficient: TwoWays;
  /** % of the green size lost from green to oven dry, Table 4-3. */
  readonly shrinkage: TwoWays;
  /** Moisture, %, below which it shrinks. */
  readonly fibreSaturation: number;
  /** Specific gravity at 12 % moisture, Table 5-3; null where not listed. */
  readonly gravity: number | null;
  /** 'printed' in a table of the handbook, or 'derived' from the other table by the identity between them (formula W3). */
  readonly from: { readonly coefficient: 'printed' | 'derived'; readonly shrinkage: 'printed' | 'derived' };
  /** Which figures were written down from memory. */
  readonly fromMemory: readonly string[];
}

/**
 * The dimensional change coefficient that belongs to a shrinkage.
 *
 * `shrinkage` in % from green to oven dry; the answer is per 1 % of moisture, of the size at 10 %. Straight-line
 * shrinkage below fibre saturation F: C = (S/F) / (100 − S·(F − 10)/F). With F = 30 it reproduces Wood Handbook
 * Table 13-5 from Table 4-3 to the last printed digit, sycamore's tangential excepted (1 in the fifth place).
 *
 * @example coefficientFromShrinkage(7.1) // 0.00248, black cherry, tangential
 */
export function coefficientFromShrinkage(shrinkage: number, fibreSaturation = 30): number {
  return shrinkage / fibreSaturation / (100 - (shrinkage * (fibreSaturation - 10)) / fibreSaturation);
}

/** The shrinkage, %, that belongs to a dimensional change coefficient: the inverse of {@link coefficientFromShrinkage}. */
export function shrinkageFromCoefficient(coefficient: number, fibreSaturation = 30): number {
  return (100 * fibreSaturation * coefficient) / (1 + (fibreSaturation - 10) * coefficient);
}

/** Every wood known, as the tables have them. */
export function listSpecies(): readonly Species[] {
  return SPECIES_TABLE.map(fillIn);
}

/**
 * The wood of this name, or null where none is known by it.
 *
 * Capitals, hyphens, commas and the order of the words do not matter: "Cherry, black" is black cherry.
 */
export function findSpecies(name: string): Species | null {
  const wanted = nameKey(name);
  const row = rowOf(wanted);
  return row ? fillIn(row) : null;
}

/** A wood with the maker's own figures: coefficients as parts of the size per 1 % of moisture, density in kg/m³ at 12 %. */
export interface OwnWood {
  readonly name: string;
  readonly tangential: number;
  readonly radial: number;
  readonly density?: number;
}

/** A wood from its own figures; shrinkage follows from them as for the handbook's woods (formula W3). */
export function speciesOf({ name, tangential, radial, density }: OwnWood): Species {
  return {
    name,
    coefficient: { radial, tangential },
    shrinkage: { radial: shrinkageFromCoefficient(radial), tangential: shrinkageFromCoefficient(tangential) },
    fibreSaturation: 30,
    gravity: density === undefined ? null : density / 1120,
    from: { coefficient: 'printed', shrinkage: 'derived' },
    fromMemory: [],
  };
}

/** The woods of the table that share a name, such as oak, which none of them has alone; none for any other name. */
export function woodsCalled(name: string): string[] {
  const wanted = nameKey(name);
  if (findSpecies(name) !== null) return [];
  const has = (known: string) => nameKey(known).split(' ').includes(wanted);
  const names = SPECIES_TABLE.filter((row) => [row.name, ...row.also].some(has)).map((row) => row.name);
  return names.length > 1 ? names : [];
}

/**
 * The name of a known wood that a misspelt one most likely meant: least letters changed, first in the table among equals;
 * null where none is near.
 */
export function nearestSpecies(name: string): string | null {
  const wanted = nameKey(name);
  let best = { name: SPECIES_TABLE[0]!.name, distance: Number.POSITIVE_INFINITY };
  for (const row of SPECIES_TABLE) {
    for (const known of [row.name, ...row.also]) {
      const distance = lettersChanged(wanted, nameKey(known));
      if (distance < best.distance) best = { name: row.name, distance };
    }
  }
  // A third of the letters wrong is a slip; more is another wood.
  return best.distance <= wanted.length / 3 ? best.name : null;
}

let rowsByKey: ReadonlyMap<string, SpeciesRow> | undefined;

/** The row of the table with a name of this key. Listed once: a job asks for the same wood at each of its doors. */
function rowOf(key: string): SpeciesRow | undefined {
  // The first row of a name stands: later ones are put in before it.
  rowsByKey ??= new Map(
    SPECIES_TABLE.toReversed().flatMap((row) => [row.name, ...row.also].map((known) => [nameKey(known), row] as const)),
  );
  return rowsByKey.get(key);
}

function fillIn(row: SpeciesRow): Species {
  const F = row.fibreSaturation;
  const coefficient = row.coefficient ?? row.shrinkage!.map((each) => coefficientFromShrinkage(each, F));
  const shrinkage = row.shrinkage ?? row.coefficient!.map((each) => shrinkageFromCoefficient(each, F));
  return {
    name: row.name,
    coefficient: { radial: coefficient[0]!, tangential: coefficient[1]! },
    shrinkage: { radial: shrinkage[0]!, tangential: shrinkage[1]! },
    fibreSaturation: F,
    gravity: row.gravity,
    from: {
      coefficient: row.coefficient ? 'printed' : 'derived',
      shrinkage: row.shrinkage ? 'printed' : 'derived',
    },
    fromMemory: row.fromMemory,
  };
}

/** Words in alphabetical order without case or punctuation, so that "Cherry, black" and "black cherry" are one name. */
function nameKey(name: string): string {
  const words = name.toLowerCase().match(/[a-z]+/g) ?? [];
  return words.sort().join(' ');
}

/** Least number of letters to insert, delete or replace (Levenshtein) to turn one word into the other. */
function lettersChanged(from: string, to: string): number {
  let row = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const replaced = row[j - 1]! + (from[i - 1] === to[j - 1] ? 0 : 1);
      next.push(Math.min(replaced, row[j]! + 1, next[j - 1]! + 1));
    }
    row = next;
  }
  return row[to.length]!;
}
