import type { Door } from '../door/door.ts';
import type { FitLimits, Frame } from '../joint/frame.ts';
import type { Panel } from '../joint/panel.ts';
import type { Cut } from '../machining/cut.ts';
import type { Language } from '../problem/language.ts';
import type { Terms } from '../problem/terms.ts';
import type { Shop } from '../shop/shop.ts';
import type { Season, SpreadLimits } from '../spread/limits.ts';

export type { Door } from '../door/door.ts';
export type * from '../joint/frame.ts';
export type * from '../joint/panel.ts';
export type * from '../machining/cut.ts';
export type * from '../profile/profile.ts';
export type * from '../shop/shop.ts';
export type { Season, SpreadLimits } from '../spread/limits.ts';
export type { Moisture } from '../wood/moisture.ts';

/** A job as the engine wants it: millimetres, radians, complete. */
export interface Job {
  readonly title: string;
  /** The file's own unit: how lengths are shown, never how they are held. */
  readonly units: 'mm' | 'in';
  /** Whose trade terms the words use; those of the unit where it names none. */
  readonly terms?: Terms;
  /** What problems and advice are said in; English where none is named. */
  readonly language?: Language;
  readonly panel: Panel;
  readonly frame: Frame;
  readonly cuts: readonly Cut[];
  readonly fit: FitLimits;
  readonly spread?: SpreadLimits;
  readonly season?: Season;
  readonly doors: readonly Door[];
  /** Whether lots of narrow panels that fill no blank get a spare panel beside them. */
  readonly spares?: boolean;
  readonly shop?: Shop;
}
