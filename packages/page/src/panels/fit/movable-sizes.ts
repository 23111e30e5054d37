import type { Desk } from '../../desk/desk.ts';

/** The sizes that may move, with the words for them: every cut's depth and reach, the stock and the groove. */
export function movesOf(desk: Desk): (readonly [string, string])[] {
  const cuts = desk.job.value.cuts;
  return [
    ...cuts.map(({ name }) => [`${name}.depth`, `the depth of the ${name}`] as const),
    ['panel.thickness', 'the stock'] as const,
    ['frame.groove.width', 'the width of the groove'] as const,
    ['frame.groove.setback', 'the setback of the groove'] as const,
    ...cuts.map(({ name }) => [`${name}.reach`, `the reach of the ${name}`] as const),
  ];
}

/** The size to move unless another is chosen: a cut on the back sizes the tongue and shows least. */
export function firstMove(desk: Desk): string {
  const { cuts } = desk.job.value;
  const cut = cuts.find(({ side }) => side === 'back') ?? cuts[0];
  return cut === undefined ? 'panel.thickness' : `${cut.name}.depth`;
}
