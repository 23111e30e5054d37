import type { Head, Machine, Rules } from '../shop/shop.ts';
import type { Work } from './work.ts';

/** How fast the stock goes past, and what marks that leaves: m/min and mm. */
export interface ChosenFeed {
  readonly feedRate: number;
  readonly feedBy: 'feeder' | 'hand';
  readonly pitch: number;
  /** Height of the wave where the cutting radius is least. */
  readonly height: number;
  /** No feed of the machine is slow enough for the shop's greatest pitch. */
  readonly tooCoarse: boolean;
}

/**
 * The fastest feed whose knife marks stay within the shop's pitch (formula U7). Only one knife leaves its mark, whatever their
 * number, unless they are jointed: no bolted knife is set to a hundredth of a hundredth. Without a power feed it is the greatest
 * feed by hand that keeps the pitch.
 *
 * `leastRadius` is the cutting radius at the inner end of the cut, mm, where the wave is highest.
 */
export function chooseFeed(
  head: Pick<Head, 'knives' | 'jointed'>,
  { feeds }: Pick<Machine, 'feeds'>,
  speed: number,
  leastRadius: number,
  rules: Pick<Rules, 'knifeMark'>,
): ChosenFeed {
  const marking = head.jointed ? head.knives : 1;
  const pitchAt = (feed: number) => (1000 * feed) / (speed * marking);
  const finest = (rules.knifeMark * speed * marking) / 1000;
  const fineEnough = feeds.filter((feed) => pitchAt(feed) <= rules.knifeMark * (1 + ROUNDING));
  const byHand = feeds.length === 0;
  const feedRate = byHand ? finest : fineEnough.length > 0 ? Math.max(...fineEnough) : Math.min(...feeds);
  const pitch = pitchAt(feedRate);
  return {
    feedRate,
    feedBy: byHand ? 'hand' : 'feeder',
    pitch,
    height: waveHeight(leastRadius, pitch),
    tooCoarse: !byHand && fineEnough.length === 0,
  };
}

/** The machine's power feeds that a cut can use: none on a rail's end in its carrier, and none round the inside of a frame. */
export function feedsFor({ frame }: Pick<Work, 'frame'>, { feeds }: Pick<Machine, 'feeds'>): readonly number[] {
  return frame?.kind === 'cope' || frame?.kind === 'back edge' ? [] : feeds;
}

/** A feed that gives just the wanted pitch is fine enough. */
const ROUNDING = 1e-12;

/**
 * Height of the waves that knives on a radius leave at a pitch, mm: R − √(R² − f²/4), written without the subtraction.
 *
 * @example waveHeight(80, 1) // 0.0015625…
 */
export function waveHeight(radius: number, pitch: number): number {
  const half = (pitch * pitch) / 4;
  if (half >= radius * radius) return radius;
  return half / (radius + Math.sqrt(radius * radius - half));
}
