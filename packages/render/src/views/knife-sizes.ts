import type { KnifeReport } from '@fielded/core';
import { type Box, loopsBox } from '@fielded/geometry';
import type { Figure } from '../dimension/figure.ts';
import type { LinearDimension, Side } from '../dimension/linear.ts';
import { sayKnife } from '../words/english/knife.ts';
import { figureText, type InVoice } from '../words/lengths.ts';
import type { LaidKnife } from './steel.ts';

/** Length on the steel and in the wood, width, and where the tip stands in it. */
export function knifeSizes(knife: KnifeReport, voice: InVoice, laid: LaidKnife, around: Box): LinearDimension[] {
  const tiers: LinearDimension[] = [];
  const add = (side: Side, figure: Figure, x0: number, y0: number, x1: number, y1: number) =>
    tiers.push({ ...figure, side, from: { x: x0, y: y0 }, to: { x: x1, y: y1 } });
  const figure = (key: keyof KnifeReport | 'wood.length', value: number, word: string, label: string): Figure => ({
    key,
    of: `knives.${key}`,
    value,
    ...figureText(value, voice),
    word,
    label,
    tone: 'plain',
  });
  const steel = loopsBox(laid.knife)!;
  const wood = loopsBox(laid.wood)!;
  const { x0, x1 } = around;
  add(
    'right',
    figure(
      'length',
      knife.length,
      sayKnife('mark.knifeLength', {}, voice),
      sayKnife('label.knifeLength', { mm: knife.length }, voice),
    ),
    x1,
    -knife.length,
    x1,
    0,
  );
  add(
    'left',
    figure(
      'wood.length',
      knife.wood.length,
      sayKnife('mark.woodLength', {}, voice),
      sayKnife('label.woodLength', { mm: knife.wood.length }, voice),
    ),
    x0,
    wood.y0,
    x0,
    wood.y1,
  );
  add(
    'below',
    figure('width', knife.width, '', sayKnife('label.knifeWidth', { mm: knife.width }, voice)),
    steel.x0,
    steel.y1,
    steel.x1,
    steel.y1,
  );
  const shallow = laid.way > 0 ? steel.x0 : steel.x1;
  const toTip = Math.abs(shallow);
  if (toTip > 0.005 && knife.width - toTip > 0.005)
    add(
      'below',
      figure('tipAt', toTip, sayKnife('mark.toTip', {}, voice), sayKnife('label.toTip', { mm: toTip }, voice)),
      shallow,
      steel.y1,
      0,
      0,
    );
  return tiers;
}

/** The limiter's own extent along t and along s, and how far it lies back from the knife's tip line. */
export function limiterSizes(knife: KnifeReport, voice: InVoice, laid: LaidKnife, around: Box): LinearDimension[] {
  const { x0, x1, y0, y1 } = loopsBox(laid.limiter)!;
  const size = (key: string, value: number, word: string, label: string): Figure => ({
    key: `limiter.${key}`,
    of: `knives.limiter.${key}`,
    value,
    ...figureText(value, voice),
    word,
    label,
    tone: 'plain',
  });
  const { length, width } = knife.limiter!;
  const right = around.x1;
  return [
    {
      ...size(
        'length',
        length,
        sayKnife('mark.limiterLength', {}, voice),
        sayKnife('label.limiterLength', { mm: length }, voice),
      ),
      side: 'right',
      from: { x: right, y: y0 },
      to: { x: right, y: y1 },
    },
    {
      ...size('width', width, '', sayKnife('label.limiterWidth', { mm: width }, voice)),
      side: 'below',
      from: { x: x0, y: y1 },
      to: { x: x1, y: y1 },
    },
  ];
}
