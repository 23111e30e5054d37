import type { KnifeReport } from '@fielded/core';
import { safeText } from '../text/safe-text.ts';
import { sayKnife } from '../words/english/knife.ts';
import { type InVoice, spokenNumber } from '../words/lengths.ts';
import { reliefNotes } from '../words/relief.ts';

/** What stands under a knife's drawing, a sentence or two a line. */
export function knifeNotes(knife: KnifeReport, voice: InVoice): string[] {
  const { heel, clearance, leastRadius: radius } = knife;
  const turns = { least: clearance.least, side: clearance.side.least, heel: Math.abs(heel.least) };
  return [
    `${sayHead(knife, voice)} ${sayHeld(knife, voice)}`,
    sayGround(knife, voice),
    sayOutline(knife, voice),
    ...sayLimiter(knife, voice),
    ...reliefNotes(knife, voice),
    sayKnife(heel.least < 0 ? 'note.clearance.outside' : 'note.clearance.inside', turns, voice),
    sayKnife('note.passes', { radius }, voice),
    sayKnife('note.marks', {}, voice),
  ];
}

function sayHead({ head, cuttingRadius: radius, rake, shear, wedge }: KnifeReport, voice: InVoice): string {
  const figures = { head: safeText(head), radius, rake, shear, wedge };
  return sayKnife(shear === 0 ? 'note.head.plain' : 'note.head.shear', figures, voice);
}

function sayHeld({ presented }: KnifeReport, voice: InVoice): string {
  if (presented === 0) return sayKnife('note.flat', {}, voice);
  return presented === 90 ? sayKnife('note.on-edge', {}, voice) : sayKnife('note.tilted', { tilt: presented }, voice);
}

function sayGround({ groundFor: { run, rotation }, assumed }: KnifeReport, voice: InVoice): string {
  const turn = { rotation: sayKnife(`turn.${rotation}`, {}, voice) };
  return sayKnife(assumed ? `note.ground.${run}.assumed` : `note.ground.${run}`, turn, voice);
}

function sayOutline({ deviation, pieces }: KnifeReport, voice: InVoice): string {
  if (deviation === 0) return sayKnife('note.exact', {}, voice);
  return sayKnife('note.fitted', { pieces, deviation: spokenNumber(deviation, 4, voice) }, voice);
}

function sayLimiter({ limiter }: KnifeReport, voice: InVoice): string[] {
  if (!limiter) return [];
  const { most: gap, side, alongFace } = limiter.gap;
  const { least, most } = alongFace;
  const key = most - least < 0.005 ? 'note.limiter' : 'note.limiter.range';
  return [sayKnife(key, { gap, side, least, most }, voice)];
}
