import { type NamePlace, type Problem, sayFault, type Units } from '@fielded/core';
import { keepTogether } from './keep-together.ts';

/** What the fields of the page call the places of a job file. */
const NAMES: readonly (readonly [RegExp, string])[] = [
  [/^panel\.thickness$/, 'the stock'],
  [/^panel\.measured$/, 'the stock as measured'],
  [/^panel\.species$/, 'the wood'],
  [/^panel\.width$/, 'the width of the panel'],
  [/^frame\.thickness$/, 'the frame'],
  [/^frame\.groove\.(width|depth|setback)$/, "the groove's $1"],
  [/^frame\.groove$/, 'the groove'],
  [/^frame\.swellGap$/, 'the swell gap'],
  [/^cuts\[\d+\](?:\.profile)?\.(depth|reach|land|shoulder|balance|run|name)$/, 'the $1'],
];

/** What the field of a place of the job file is called; the path where there is no field. */
const namePlace: NamePlace = (path) => {
  const [pattern, name] = NAMES.find(([each]) => each.test(path)) ?? [];
  return pattern === undefined ? path : path.replace(pattern, name!);
};

/** What is wrong with the job, in the page's own words: places of the job file under the names of their fields, lengths whole. */
export function plainFault(fault: Problem, units: Units): string {
  return keepTogether(sayFault(fault, { units, namePlace }));
}

/** What is wrong at a place, in words that stand beside its field: without the field's name. */
export function faultBeside(fault: Problem, units: Units, place: string = fault.at): string {
  const words = sayFault(fault, { units, namePlace: (path) => (path === place ? '' : namePlace(path)) });
  return keepTogether(words[0]!.toUpperCase() + words.slice(1));
}
