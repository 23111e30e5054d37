import type { KnifeReport } from '@fielded/core';
import { type Box, loopsBox } from '@fielded/geometry';
import type { Figure } from '../dimension/figure.ts';
import type { LinearDimension } from '../dimension/linear.ts';
import { KNIFE_WORDS, sayKnife } from '../words/english/knife.ts';
import type { InVoice } from '../words/lengths.ts';
import { createFigures } from './cut-dimensions.ts';
import type { LaidKnife } from './steel.ts';
import { tier } from './tier.ts';

/** Length on the steel and in the wood, width, and where the tip stands in it. */
export function knifeSizes(knife: KnifeReport, voice: InVoice, laid: LaidKnife, around: Box): LinearDimension[] {
  const steel = loopsBox(laid.knife)!;
  const wood = loopsBox(laid.wood)!;
  const { x0, x1 } = around;
  const length = sizeOf('length', knife.length, 'knifeLength', voice);
  const inWood = sizeOf('wood.length', knife.wood.length, 'woodLength', voice);
  const width = sizeOf('width', knife.width, 'knifeWidth', voice);
  const shallow = laid.way > 0 ? steel.x0 : steel.x1;
  const toTip = Math.abs(shallow);
  const tipAt = sizeOf('tipAt', toTip, 'toTip', voice);
  // A tip that stands at an end of the width needs no size of its own.
  const tipIsInside = toTip > 0.005 && knife.width - toTip > 0.005;
  return [
    tier('right', length, { x: x1, y: -knife.length }, { x: x1, y: 0 }),
    tier('left', inWood, { x: x0, y: wood.y0 }, { x: x0, y: wood.y1 }),
    tier('below', width, { x: steel.x0, y: steel.y1 }, { x: steel.x1, y: steel.y1 }),
    ...(tipIsInside ? [tier('below', tipAt, { x: shallow, y: steel.y1 }, { x: 0, y: 0 })] : []),
  ];
}

/** The limiter's own extent along t and along s. */
export function limiterSizes(knife: KnifeReport, voice: InVoice, laid: LaidKnife, around: Box): LinearDimension[] {
  const { x0, x1, y0, y1 } = loopsBox(laid.limiter)!;
  const { length, width } = knife.limiter!;
  const right = around.x1;
  return [
    tier('right', sizeOf('limiter.length', length, 'limiterLength', voice), { x: right, y: y0 }, { x: right, y: y1 }),
    tier('below', sizeOf('limiter.width', width, 'limiterWidth', voice), { x: x0, y: y1 }, { x: x1, y: y1 }),
  ];
}

const figure = createFigures(KNIFE_WORDS, sayKnife);
type SizeName = Parameters<typeof figure>[3];

/** A size of a knife or of its limiter, mm, by its key in the report. */
function sizeOf(key: string, mm: number, name: SizeName, voice: InVoice): Figure {
  return { ...figure(voice, `knives.${key}`, mm, name), key };
}
