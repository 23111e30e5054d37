import type { HungIn, OpeningSize } from '../door/door.ts';
import type { Door, FitLimits, Frame, FrameJoint, Groove, Panel, Season, SpreadLimits } from '../job/job.ts';
import type { Cut } from '../machining/cut.ts';
import type { Terms } from '../problem/terms.ts';
import type { NamedProfile } from '../profile/profile.ts';
import type { Rates } from '../shop/rates.ts';
import type { Head, Machine, Rules, ShopKnife } from '../shop/shop.ts';
import type { OwnWood } from '../wood/species.ts';
import type { FileWood } from './complete-wood.ts';

/** A profile as it stands in a file: a free outline is still its path data, in the file's unit, or the name of a drawing. */
export type FileProfile = NamedProfile | FileOutline;

interface FileOutline {
  readonly shape: 'outline';
  readonly path?: string;
  readonly file?: string;
}

/** A cut as it stands in the job file: mm and radians, its profile its own or a knife's of the shop. */
export interface FileCut {
  readonly name?: string;
  readonly side: Cut['side'];
  readonly profile?: FileProfile;
  readonly knife?: string;
  readonly depth?: number;
  readonly reach?: number;
  readonly run: Cut['run'];
  readonly presented: number;
  readonly head?: string;
}

/** A door as it stands in the job file: its own size, or the carcase's opening that it hangs in. */
export interface FileDoor {
  readonly name?: string;
  readonly quantity: number;
  readonly width?: number;
  readonly height?: number;
  readonly stile: number;
  readonly rail: number;
  readonly topRail?: number;
  readonly bottomRail?: number;
  readonly midRail?: number;
  readonly muntin: number;
  readonly across?: number;
  readonly up?: number;
  readonly columns?: readonly OpeningSize[];
  readonly rows?: readonly OpeningSize[];
  readonly grain: Door['grain'];
  readonly opening?: { readonly width: number; readonly height: number };
  readonly hung?: HungIn['hung'];
  readonly gap?: number;
  readonly overlay?: number;
  readonly between?: number;
  readonly leaves?: number;
  readonly head?: FileShapedHead;
}

/** A shaped head as it stands in the job file: which radii it has depends on its shape. */
export interface FileShapedHead {
  readonly shape: 'arch' | 'cathedral' | 'outline';
  readonly rise?: number;
  readonly path?: string;
  readonly crown?: number;
  readonly ears?: number;
}

/** What a job file says: mm and radians, defaults filled in, nothing checked against anything else yet. */
export interface JobFile {
  readonly title: string;
  readonly units: 'mm' | 'in';
  readonly terms?: Terms;
  readonly shop?: string;
  readonly panel: Omit<Panel, 'measured' | 'species' | 'wood'> & {
    readonly measured?: number;
    readonly species?: FileWood;
  };
  readonly frame: Omit<
    Frame,
    'sticking' | 'stickingHead' | 'backEdge' | 'groove' | 'endGap' | 'joint' | 'species' | 'wood'
  > & {
    readonly species?: FileWood;
    readonly groove: Groove;
    readonly sticking?: FileProfile & { readonly head?: string };
    readonly backEdge?: FileProfile & { readonly head?: string };
    readonly endGap?: number;
    readonly joint?: { readonly kind: FrameJoint['kind']; readonly length?: number };
  };
  readonly cuts: readonly FileCut[];
  readonly fit: FitLimits;
  readonly spread?: SpreadLimits;
  readonly season?: Season;
  readonly doors: readonly FileDoor[];
  readonly spares?: boolean;
}

/** A knife as it stands in the shop file: a profile with what is known about the steel beside it. */
type FileKnife = FileProfile & Omit<ShopKnife, 'profile'>;

/** A machine as it stands in the shop file: without rings its table has its bare opening. */
type FileMachine = Omit<Machine, 'rings'> & Partial<Pick<Machine, 'rings'>>;

/** What a shop file says. */
export interface ShopFile {
  readonly units: 'mm' | 'in';
  readonly knives: Readonly<Record<string, FileKnife>>;
  readonly heads: Readonly<Record<string, Head>>;
  readonly machines: Readonly<Record<string, FileMachine>>;
  readonly rules: Rules;
  readonly woods?: Readonly<Record<string, Omit<OwnWood, 'name'>>>;
  readonly rates?: Rates;
  readonly name?: string;
  readonly address: readonly string[];
  readonly logo?: string;
}

/** The same shape with any part of it missing: what is left of a file once its faulty values are struck out. */
export type Loose<T> = T extends string | number | boolean | undefined
  ? T | undefined
  : T extends readonly (infer I)[]
    ? readonly Loose<I>[] | undefined
    : { readonly [K in keyof T]?: Loose<T[K]> | undefined } | undefined;
