import type { KnifeReport } from '@fielded/core';
import { safeText } from '../text/safe-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import type { InVoice } from '../words/lengths.ts';

/** A line of the order's list: what it is, and what is wanted. `confirm` marks what is assumed: it has to be confirmed before it is ground. */
export interface OrderLine {
  /** What the line is called in the drawing. */
  readonly key: string;
  readonly what: string;
  readonly wanted: string;
  readonly confirm?: boolean;
}

/** What a grinder has to know of a knife besides its outline. */
export function orderLines(knife: KnifeReport, voice: InVoice): OrderLine[] {
  const { run, rotation } = knife.groundFor;
  const { thickness, width, wedge, assumed: confirm } = knife;
  const { edge, face } = knife.overrun;
  const length = knife.length + Math.max(edge, face);
  const circle = 2 * knife.cuttingRadius;
  const { count } = knife;
  const head = safeText(knife.head);
  const turn = { rotation: sayKnife(`turn.${rotation}`, {}, voice) };
  const of = (key: string, what: WantedName, wanted: string): OrderLine => ({
    key,
    what: sayKnife(`wanted.${what}`, {}, voice),
    wanted,
  });
  return [
    of(
      'wanted',
      'count',
      count === 1
        ? sayKnife('wanted.count.is.one', { head }, voice)
        : sayKnife('wanted.count.is', { count, head }, voice),
    ),
    { ...of('hand', 'hand', sayKnife(`wanted.hand.${run}`, turn, voice)), confirm },
    { ...of('this side up', 'up', upperSide(knife, voice)), confirm },
    of('steel', 'steel', sayKnife('wanted.steel.is', { thickness }, voice)),
    of('blank', 'blank', sayKnife('wanted.blank.is', { width, length }, voice)),
    of('cutting circle', 'circle', sayKnife('wanted.circle.is', { circle }, voice)),
    of('rake, shear', 'rake', rakeWords(knife, voice)),
    of('wedge', 'wedge', sayKnife('wanted.wedge.is', { wedge }, voice)),
    of('clearance', 'clearance', sayKnife('wanted.clearance.is', { clearance: knife.clearance.least }, voice)),
    of('panel', 'panel', heldWords(knife, voice)),
    of('overrun', 'overrun', sayKnife('wanted.overrun.is', { edge, face }, voice)),
  ];
}

type WantedName =
  | 'count'
  | 'hand'
  | 'up'
  | 'steel'
  | 'blank'
  | 'circle'
  | 'rake'
  | 'wedge'
  | 'clearance'
  | 'panel'
  | 'overrun';

/** Which end of the knife is the upper one on the machine. */
function upperSide({ groundFor, presented }: KnifeReport, voice: InVoice): string {
  if (presented === 90) return sayKnife('wanted.up.edge', {}, voice);
  return sayKnife(groundFor.run === 'under' ? 'wanted.up.deep' : 'wanted.up.face', {}, voice);
}

function rakeWords({ rake, shear }: KnifeReport, voice: InVoice): string {
  if (shear === 0) return sayKnife('wanted.rake.plain', { rake }, voice);
  const key = shear > 0 ? 'wanted.rake.trailing' : 'wanted.rake.leading';
  return sayKnife(key, { rake, shear: Math.abs(shear) }, voice);
}

function heldWords({ presented }: KnifeReport, voice: InVoice): string {
  if (presented === 0) return sayKnife('wanted.panel.flat', {}, voice);
  return presented === 90
    ? sayKnife('wanted.panel.on-edge', {}, voice)
    : sayKnife('wanted.panel.tilted', { tilt: presented }, voice);
}
