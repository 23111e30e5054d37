/** Two lengths that differ by less than this (mm) are equal: a picometre, far below what matters in wood and far above rounding at 1 m (1e-13 mm). */
export const SAME_LENGTH = 1e-9;

/** A strip narrower than this (mm) is left out: it is wider than rounding at 1 m, and has less than 1e-10 mm² at any panel's thickness. */
export const STRIP_WIDTH = 1e-12;

/** Where wood is thinner than this (mm) across a whole strip, its two surfaces coincide and only rounding parts them. */
export const SLIVER = 1e-11;

/** An arc that is followed to within this (mm, in x) of its end has reached it: rounding must not send it round once more. */
export const ARC_END = 1e-11;
