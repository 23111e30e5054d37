import { facePhrase, formatLength, type Report } from '@fielded/core';

/** One of the five figures that decide a fit: its name, the figure in words, and its value, mm. */
export interface Deciding {
  readonly key: 'tip' | 'mouth' | 'clearance' | 'goes in' | 'face';
  readonly name: string;
  readonly words: string;
  readonly mm: number | null;
}

const NONE = '–';

/** Tongue at tip and mouth, clearance, how far it goes in, how the front face stands. */
export function decidingFigures({ tongue, fit, units }: Report): Deciding[] {
  const say = (mm: number | null) => (mm === null ? NONE : formatLength(mm, units));
  return [
    { key: 'tip', name: 'Tongue at tip', words: say(tongue.thicknessAtTip), mm: tongue.thicknessAtTip },
    { key: 'mouth', name: 'At mouth', words: say(tongue.thicknessAtMouth), mm: tongue.thicknessAtMouth },
    { key: 'clearance', name: 'Clearance', words: say(fit.clearance), mm: fit.clearance },
    {
      key: 'goes in',
      name: 'Goes in',
      words: goesIn(tongue.insertion, fit.deepestInsertion, say),
      mm: goesTo(tongue.insertion, fit.deepestInsertion),
    },
    {
      key: 'face',
      name: 'Face',
      words: fit.frontFace === null ? NONE : facePhrase(fit.frontFace, units),
      mm: fit.frontFace?.most ?? null,
    },
  ];
}

/** How far the tongue goes in, mm: to the insertion, or to where it stops before. */
function goesTo(insertion: number, deepest: number | null): number | null {
  return deepest === null ? null : Math.min(insertion, deepest);
}

function goesIn(insertion: number, deepest: number | null, say: (mm: number | null) => string): string {
  const reached = goesTo(insertion, deepest);
  if (reached === null) return NONE;
  return reached < insertion ? `${say(reached)} of ${say(insertion)}` : say(reached);
}
