/** Two lengths closer than this (mm) are one: a tenth of an ångström's worth of wood, far above rounding at 1 m (1e-13). */
export const SAME_LENGTH = 1e-9;

/** Arcs flatter than this (mm, chord to arc) are drawn and computed as their chord: below every other figure's rounding. */
export const FLAT_ARC = 1e-12;

/** The section is drawn this far (mm) past the greatest reach, so that some untouched field shows. */
export const FIELD_SHOWN = 20;
