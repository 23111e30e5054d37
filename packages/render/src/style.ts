import type { Role } from './scene.ts';

export type Theme = 'print' | 'light' | 'dark';

/** The colours of a drawing. */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  readonly quiet: string;
  readonly hatch: string;
  readonly grain: string;
  readonly removed: string;
  readonly judged: string;
  readonly trouble: string;
  /** Wood in light and shade, from the face that catches most light to the one that catches least. */
  readonly tone1: string;
  readonly tone2: string;
  readonly tone3: string;
  readonly tone4: string;
  readonly tone5: string;
  readonly tone6: string;
  readonly tone7: string;
  readonly tone8: string;
  /** Wood cut across. */
  readonly toneCut: string;
}

/** Wood that lies on white or warm paper. */
const PALE_WOOD = {
  tone1: '#fbf5ea',
  tone2: '#f3eadb',
  tone3: '#e9ddca',
  tone4: '#dfcfb8',
  tone5: '#d4c1a5',
  tone6: '#c9b292',
  tone7: '#bea37e',
  tone8: '#b3946a',
  toneCut: '#d9c09a',
};

/** Ink on white for prints; ink on warm paper and light on near-black for screens. Text and its ground differ by 4.5 to 1 or more. */
export const PALETTES: Readonly<Record<Theme, Palette>> = {
  print: {
    paper: '#ffffff',
    ink: '#1d2430',
    quiet: '#5a6270',
    hatch: '#8a6a46',
    grain: '#c4ae92',
    removed: '#f6efe5',
    judged: '#0b6e6e',
    trouble: '#b3261e',
    ...PALE_WOOD,
  },
  light: {
    paper: '#faf7f0',
    ink: '#1d2430',
    quiet: '#5a6270',
    hatch: '#8a6a46',
    grain: '#c4ae92',
    removed: '#f1e8da',
    judged: '#0b6e6e',
    trouble: '#b3261e',
    ...PALE_WOOD,
  },
  dark: {
    paper: '#171a1f',
    ink: '#e8e4da',
    quiet: '#a8a69f',
    hatch: '#9c7b55',
    grain: '#55473a',
    removed: '#23211f',
    judged: '#5cc4bd',
    trouble: '#ff8a80',
    tone1: '#75634c',
    tone2: '#6c5c46',
    tone3: '#635340',
    tone4: '#584a39',
    tone5: '#4e4132',
    tone6: '#43372b',
    tone7: '#372e23',
    tone8: '#2c241c',
    toneCut: '#7a6447',
  },
};

/** How a role is painted: line widths and dashes in paper mm, after ISO 128. */
export interface Style {
  readonly fill?: keyof Palette;
  readonly stroke?: keyof Palette;
  readonly width?: number;
  readonly dash?: readonly number[];
  readonly cap?: 'butt' | 'round';
}

export const STYLES: Readonly<Record<Role, Style>> = {
  paper: { fill: 'paper' },
  wood: { fill: 'paper' },
  removed: { fill: 'removed' },
  old: { stroke: 'quiet', width: 0.25, dash: [3, 1.5] },
  outline: { stroke: 'ink', width: 0.5, cap: 'round' },
  fine: { stroke: 'ink', width: 0.35, cap: 'round' },
  thin: { stroke: 'ink', width: 0.25 },
  break: { stroke: 'ink', width: 0.25 },
  hidden: { stroke: 'ink', width: 0.25, dash: [2, 1] },
  cutter: { stroke: 'ink', width: 0.25, dash: [6, 1, 1, 1] },
  hatch: { stroke: 'hatch', width: 0.18, cap: 'butt' },
  'hatch-frame': { stroke: 'hatch', width: 0.18, cap: 'butt' },
  grain: { stroke: 'grain', width: 0.18, cap: 'round' },
  judged: { stroke: 'judged', width: 0.5, cap: 'round' },
  'judged-thin': { stroke: 'judged', width: 0.25 },
  'judged-fill': { fill: 'judged' },
  trouble: { stroke: 'trouble', width: 0.5, cap: 'round' },
  'trouble-thin': { stroke: 'trouble', width: 0.25 },
  'trouble-fill': { fill: 'trouble' },
  dimension: { stroke: 'quiet', width: 0.25 },
  arrow: { fill: 'quiet' },
  text: { fill: 'ink' },
  quiet: { fill: 'quiet' },
  'judged-text': { fill: 'judged' },
  'trouble-text': { fill: 'trouble' },
  'tone-1': { fill: 'tone1' },
  'tone-2': { fill: 'tone2' },
  'tone-3': { fill: 'tone3' },
  'tone-4': { fill: 'tone4' },
  'tone-5': { fill: 'tone5' },
  'tone-6': { fill: 'tone6' },
  'tone-7': { fill: 'tone7' },
  'tone-8': { fill: 'tone8' },
  'tone-cut': { fill: 'toneCut' },
};

/** Fonts, tried from the left; texts are laid out with widths that hold for the first two. */
export const FONT_FAMILY = 'IBM Plex Sans, DejaVu Sans, Arial, sans-serif';
