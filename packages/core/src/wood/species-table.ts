/**
 * One wood as the handbook prints it.
 *
 * `coefficient`: radial and tangential dimensional change per 1 % of moisture, of the size at 10 %, from Table 13-5.
 * `shrinkage`: radial, tangential and volumetric, % of the green size from green to oven dry, from Table 4-3.
 * null where the table has no line for this wood. `gravity`: specific gravity at 12 % moisture, Table 5-3.
 * `fibreSaturation`: moisture, %, below which it shrinks: 30, but 22 for western redcedar.
 * `fromMemory` names the figures that were written down without the page at hand.
 */
export interface SpeciesRow {
  readonly name: string;
  readonly also: readonly string[];
  readonly coefficient: readonly [radial: number, tangential: number] | null;
  readonly shrinkage: readonly [radial: number, tangential: number, volumetric: number] | null;
  readonly gravity: number | null;
  readonly fibreSaturation: number;
  readonly fromMemory: readonly ('coefficient' | 'shrinkage' | 'gravity' | 'fibreSaturation')[];
}

type Memory = SpeciesRow['fromMemory'];
const NONE: Memory = [];
const GRAVITY: Memory = ['gravity'];
const SHRINKAGE: Memory = ['shrinkage', 'gravity'];
const COEFFICIENT: Memory = ['coefficient', 'gravity'];
const ALL: Memory = ['coefficient', 'shrinkage', 'gravity'];

/** Coefficients are printed in hundred-thousandths so that the lines read like the table's columns. */
function line(
  name: string,
  also: readonly string[],
  hundredThousandths: readonly [number, number] | null,
  shrinkage: readonly [number, number, number] | null,
  gravity: number | null,
  fromMemory: Memory,
  fibreSaturation = 30,
): SpeciesRow {
  const coefficient: [number, number] | null = hundredThousandths && [
    hundredThousandths[0] / 100_000,
    hundredThousandths[1] / 100_000,
  ];
  return { name, also, coefficient, shrinkage, gravity, fibreSaturation, fromMemory };
}

/**
 * Woods a door might be made of, from USDA Forest Products Laboratory, *Wood Handbook*, FPL-GTR-190 (2010):
 * Table 13-5 (coefficients), Table 4-3 (shrinkage), Table 5-3 (specific gravity).
 *
 * The commercial oaks are groups of species: Table 13-5 has a line for each group, Table 4-3 has none.
 */
export const SPECIES_TABLE: readonly SpeciesRow[] = [
  // name, other names, 13-5 radial/tangential (10⁻⁵ per %), 4-3 radial/tangential/volumetric (%), gravity, from memory
  line('red alder', ['alder'], [151, 256], [4.4, 7.3, 12.6], 0.41, GRAVITY),
  line('white ash', ['ash', 'American ash'], [169, 274], [4.9, 7.8, 13.3], 0.6, GRAVITY),
  line('black ash', [], [172, 274], [5.0, 7.8, 15.2], 0.49, GRAVITY),
  line('Oregon ash', [], [141, 285], [4.1, 8.1, 13.2], 0.55, GRAVITY),
  line('quaking aspen', ['aspen'], [119, 234], [3.5, 6.7, 11.5], 0.38, GRAVITY),
  line('basswood', ['American basswood', 'American lime'], [230, 330], [6.6, 9.3, 15.8], 0.37, GRAVITY),
  line('American beech', ['beech'], [190, 431], [5.5, 11.9, 17.2], 0.64, GRAVITY),
  line('paper birch', [], [219, 304], [6.3, 8.6, 16.2], 0.55, GRAVITY),
  line('river birch', [], [162, 327], [4.7, 9.2, 13.5], null, NONE),
  line('yellow birch', ['birch'], [256, 338], [7.3, 9.5, 16.8], 0.62, GRAVITY),
  line('yellow buckeye', ['buckeye'], [123, 285], [3.6, 8.1, 12.5], null, NONE),
  line('butternut', ['white walnut'], [116, 223], [3.4, 6.4, 10.6], 0.38, GRAVITY),
  line('black cherry', ['cherry', 'American cherry'], [126, 248], [3.7, 7.1, 11.5], 0.5, GRAVITY),
  line('American chestnut', ['chestnut'], [116, 234], [3.4, 6.7, 11.6], 0.43, GRAVITY),
  line('black cottonwood', [], [123, 304], [3.6, 8.6, 12.4], 0.35, GRAVITY),
  line('eastern cottonwood', ['cottonwood'], [133, 327], [3.9, 9.2, 13.9], 0.4, GRAVITY),
  line('American elm', ['elm'], [144, 338], [4.2, 9.5, 14.6], 0.5, GRAVITY),
  line('rock elm', [], [165, 285], [4.8, 8.1, 14.9], 0.63, GRAVITY),
  line('slippery elm', ['red elm'], [169, 315], [4.9, 8.9, 13.8], 0.53, GRAVITY),
  line('winged elm', [], [183, 419], [5.3, 11.6, 17.7], null, NONE),
  line('hackberry', [], [165, 315], [4.8, 8.9, 13.8], 0.53, GRAVITY),
  line('pecan hickory', ['pecan'], [169, 315], [4.9, 8.9, 13.6], 0.66, GRAVITY),
  line('sugar maple', ['hard maple', 'rock maple'], [165, 353], [4.8, 9.9, 14.7], 0.63, SHRINKAGE),
  line('red maple', ['soft maple'], [137, 289], [4.0, 8.2, 12.6], 0.54, SHRINKAGE),
  line('silver maple', [], [102, 252], [3.0, 7.2, 12.0], 0.47, SHRINKAGE),
  line('bigleaf maple', [], [126, 248], [3.7, 7.1, 11.6], 0.48, SHRINKAGE),
  line('red oak', ['commercial red oak', 'American red oak'], [158, 369], null, 0.63, GRAVITY),
  line('white oak', ['commercial white oak', 'American white oak'], [180, 365], null, 0.68, GRAVITY),
  line('Quercus alba', ['true white oak'], null, [5.6, 10.5, 16.3], 0.68, GRAVITY),
  line('live oak', [], [230, 338], [6.6, 9.5, 14.7], 0.88, GRAVITY),
  line('overcup oak', [], [183, 462], [5.3, 12.7, 16.0], 0.63, GRAVITY),
  line('persimmon', ['common persimmon'], [278, 403], [7.9, 11.2, 19.1], null, NONE),
  line('sassafras', [], [137, 216], [4.0, 6.2, 10.3], 0.46, GRAVITY),
  line('sweetgum', ['red gum'], [183, 365], [5.3, 10.2, 15.8], 0.52, GRAVITY),
  line('sycamore', ['American sycamore'], [172, 296], [5.0, 8.4, 14.1], 0.49, GRAVITY),
  line('tanoak', [], [169, 423], [4.9, 11.7, 17.3], null, NONE),
  line('black tupelo', ['tupelo'], [176, 308], [5.1, 8.7, 14.4], 0.5, GRAVITY),
  line('water tupelo', [], [144, 267], [4.2, 7.6, 12.5], 0.5, GRAVITY),
  line('black walnut', ['walnut', 'American walnut'], [190, 274], [5.5, 7.8, 12.8], 0.55, GRAVITY),
  line('yellow-poplar', ['poplar', 'tulipwood', 'tulip poplar'], [158, 289], [4.6, 8.2, 12.7], 0.42, COEFFICIENT),
  line('Douglas-fir', ['coast Douglas-fir'], [165, 267], [4.8, 7.6, 12.4], 0.48, COEFFICIENT),
  line('eastern white pine', ['white pine'], [71, 212], [2.1, 6.1, 8.2], 0.35, ALL),
  line('ponderosa pine', [], [133, 216], [3.9, 6.2, 9.7], 0.4, ALL),
  line('white fir', [], [112, 245], [3.3, 7.0, 9.8], 0.39, COEFFICIENT),
  line(
    'western redcedar',
    ['western red cedar'],
    [111, 234],
    [2.4, 5.0, 6.8],
    0.32,
    [...COEFFICIENT, 'fibreSaturation'],
    22,
  ),
  line(
    'true mahogany',
    ['American mahogany', 'Honduras mahogany', 'Cuban mahogany'],
    [172, 238],
    null,
    null,
    ['coefficient', 'fibreSaturation'],
    22,
  ),
  // Woods that the handbook does not list in table 13-5: differential shrinkage, % per 1 % of moisture, and density, as they
  // are handed on after DIN 68100 and EN 350. Not at hand when these lines were written: all from memory.
  other('European oak', ['Quercus robur', 'Quercus petraea', 'English oak', 'sessile oak'], [16, 36], 0.71),
  other('European beech', ['Fagus sylvatica', 'red beech'], [20, 41], 0.72),
  other('European ash', ['Fraxinus excelsior', 'common ash'], [21, 38], 0.7),
  other('European cherry', ['wild cherry', 'Prunus avium'], [16, 26], 0.61),
  other('European walnut', ['Juglans regia'], [18, 29], 0.67),
  other('European sycamore', ['sycamore maple', 'Acer pseudoplatanus'], [15, 26], 0.63),
  other('European birch', ['silver birch', 'Betula pendula'], [29, 41], 0.66),
  other('black alder', ['common alder', 'European alder', 'Alnus glutinosa'], [16, 30], 0.53),
  other('European lime', ['lime', 'linden', 'Tilia'], [18, 30], 0.54),
  other('sweet chestnut', ['Spanish chestnut', 'Castanea sativa'], [14, 26], 0.59),
  other('European larch', ['larch', 'Larix decidua'], [14, 30], 0.6),
  other('Scots pine', ['European redwood', 'redwood deal', 'Pinus sylvestris'], [19, 36], 0.52),
  other('Norway spruce', ['European whitewood', 'spruce', 'Picea abies'], [19, 39], 0.46),
  other('sapele', ['sapelli', 'Entandrophragma cylindricum'], [24, 32], 0.65),
  other('utile', ['sipo', 'Entandrophragma utile'], [20, 25], 0.62),
  other('African mahogany', ['khaya', 'Khaya ivorensis'], [20, 25], 0.53),
  other('iroko', ['Milicia excelsa'], [19, 28], 0.65),
  other('afrormosia', ['Pericopsis elata'], [18, 32], 0.69),
  other('wenge', ['Millettia laurentii'], [22, 34], 0.83),
  other('obeche', ['abachi', 'wawa', 'ayous', 'Triplochiton scleroxylon'], [11, 19], 0.39),
];

/** One of the woods after DIN 68100: hundredths of a per cent for each 1 % of moisture, radial and tangential, and t/m³ at 12 %. */
function other(
  name: string,
  also: readonly string[],
  hundredths: readonly [number, number],
  density: number,
): SpeciesRow {
  const [radial, tangential] = hundredths;
  return line(name, also, [radial * 10, tangential * 10], null, density / 1.12, ALL);
}
