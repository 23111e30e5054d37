/** Two lengths closer than this (mm) are one: a picometre, far below any wood and far above rounding at 1 m (1e-13 mm). */
export const SAME_LENGTH = 1e-9;

/** A strip narrower than this (mm) is no strip: above rounding at 1 m, and worth less than 1e-10 mm² at any panel's thickness. */
export const STRIP_WIDTH = 1e-12;

/** Wood thinner than this (mm) across a whole strip is two surfaces that coincide, parted by rounding only. */
export const SLIVER = 1e-11;

/** An arc that has come this near (mm, across) to its end has arrived: rounding there must not send it round once more. */
export const ARC_END = 1e-11;
