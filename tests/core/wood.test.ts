import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../packages/core/src/reading/read.ts';
import { woodDensity } from '../../packages/core/src/wood/density.ts';
import { equilibriumMoisture, moistureContent } from '../../packages/core/src/wood/moisture.ts';
import { moveWood } from '../../packages/core/src/wood/movement.ts';
import {
  coefficientFromShrinkage,
  findSpecies,
  listSpecies,
  nearestSpecies,
  shrinkageFromCoefficient,
} from '../../packages/core/src/wood/species.ts';
import { SPECIES_TABLE } from '../../packages/core/src/wood/species-table.ts';
import { SOUND } from './job-texts.ts';

describe('finding a wood', () => {
  it.each([
    ['black cherry', 'black cherry'],
    ['Cherry, black', 'black cherry'],
    ['yellow poplar', 'yellow-poplar'],
    ['hard maple', 'sugar maple'],
    ['WALNUT', 'black walnut'],
  ])('%s is %s', (name, found) => {
    expect(findSpecies(name)!.name).toBe(found);
  });

  it('takes the shop’s own woods by name, in any case, before the table', () => {
    const shop =
      'fielded: 1\nwoods: { Swamp Kauri: { tangential: 0.002, radial: 0.001, density: 500 }, Black Cherry: { tangential: 0.003, radial: 0.002, density: 600 } }\n';
    const woodOf = (species: string) =>
      readJob(SOUND.replace('panel:\n', `panel:\n  species: ${species}\n`), {
        shop: { text: shop, name: 'shop.yaml' },
      }).job!.panel.wood;
    expect(woodOf('swamp kauri')).toMatchObject({ tangential: 0.002, radial: 0.001, density: 500 });
    expect(woodOf('BLACK CHERRY')).toMatchObject({ tangential: 0.003 });
    expect(woodOf('white oak')).toBeUndefined();
  });

  it('knows when it does not know, and offers the nearest', () => {
    expect(findSpecies('oak')).toBeNull();
    expect(findSpecies('')).toBeNull();
    expect(nearestSpecies('blak chery')).toBe('black cherry');
    expect(nearestSpecies('suger mapel')).toBe('sugar maple');
    expect(nearestSpecies('red oka')).toBe('red oak');
  });

  it('gives no name to two woods', () => {
    const names = SPECIES_TABLE.flatMap((row) => [row.name, ...row.also]);
    for (const name of names) {
      const row = SPECIES_TABLE.find((each) => each.name === name || each.also.includes(name))!;
      expect(findSpecies(name)!.name, name).toBe(row.name);
    }
    expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
  });

  it('says what it derived: a group of oaks has no shrinkage printed, a single oak no coefficient', () => {
    const group = findSpecies('white oak')!;
    expect(group.from).toEqual({ coefficient: 'printed', shrinkage: 'derived' });
    expect(coefficientFromShrinkage(group.shrinkage.tangential)).toBeCloseTo(0.00365, 12);
    expect(findSpecies('Quercus alba')!.from).toEqual({ coefficient: 'derived', shrinkage: 'printed' });
    expect(findSpecies('western redcedar')!.fromMemory).toContain('coefficient');
  });

  it('has sound figures for every wood: less across the rings than along them, nothing missing', () => {
    for (const species of listSpecies()) {
      expect(species.coefficient.radial, species.name).toBeGreaterThan(0);
      expect(species.coefficient.radial, species.name).toBeLessThan(species.coefficient.tangential);
      expect(species.shrinkage.radial, species.name).toBeLessThan(species.shrinkage.tangential);
      expect(species.shrinkage.tangential, species.name).toBeLessThan(15);
    }
  });
});

describe('movement', () => {
  const moisture = fc.double({ min: 0, max: 30, noNaN: true });
  const grain = { coefficient: 0.00248, shrinkage: 7.1 };

  it('goes there and back again', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5.9, noNaN: true }), moisture, (from, to) => {
        // Outside 6 to 14 % it is eq. 13-3, exact for straight-line shrinkage, so the way back ends where it began.
        const out = 400 + moveWood(400, from, to, grain);
        const back = out + moveWood(out, to, from, grain);
        expect(back).toBeCloseTo(400, 9);
      }),
    );
  });

  it('swells when wetter, shrinks when drier', () => {
    fc.assert(
      fc.property(moisture, moisture, (from, to) => {
        fc.pre(Math.abs(from - to) > 1e-6);
        expect(Math.sign(moveWood(400, from, to, grain))).toBe(Math.sign(to - from));
      }),
    );
  });

  it('stops at fibre saturation, where that is below 30 %', () => {
    const cedar = { coefficient: 0.00234, shrinkage: 5, fibreSaturation: 22 };
    expect(moveWood(400, 10, 28, cedar)).toBe(moveWood(400, 10, 22, cedar));
    expect(moveWood(400, 25, 28, cedar)).toBe(0);
  });

  it('coefficient and shrinkage are each other back to front', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 15, noNaN: true }), fc.constantFrom(22, 30), (S, F) => {
        expect(shrinkageFromCoefficient(coefficientFromShrinkage(S, F), F)).toBeCloseTo(S, 10);
      }),
    );
  });
});

describe('bad input is named', () => {
  it.each([
    [() => moveWood(400, -1, 8, { coefficient: 0.002, shrinkage: 6 }), 'moisture content must be 0 to 30 %, got -1'],
    [() => moveWood(400, 8, 31, { coefficient: 0.002, shrinkage: 6 }), 'moisture content must be 0 to 30 %, got 31'],
    [() => equilibriumMoisture(20, 101), 'relative humidity must be 0 to 100 %, got 101'],
    [() => equilibriumMoisture(20, Number.NaN), 'relative humidity must be 0 to 100 %, got NaN'],
    [() => equilibriumMoisture(-5, 50), 'temperature must be -1.2 to 132.3 °C, got -5'],
    [() => moistureContent({ temperature: 20, humidity: -3 }), 'relative humidity must be 0 to 100 %, got -3'],
    [() => woodDensity(0, 12), 'specific gravity must be above 0, got 0'],
    [() => woodDensity(0.5, -1), 'moisture content must be 0 % or more, got -1'],
  ])('%#', (call, message) => {
    expect(call).toThrow(new RangeError(message));
  });

  it('reads moisture either way', () => {
    expect(moistureContent(8)).toBe(8);
    expect(moistureContent({ temperature: 20, humidity: 50 })).toBe(equilibriumMoisture(20, 50));
  });
});
