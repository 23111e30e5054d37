/** The largest file that is read, in characters: a large job with a scanned outline takes a tenth of it. */
export const MOST_CHARACTERS = 1_000_000;

/** Values in a file, counting what aliases repeat: ten thousand doors fill half of it, an alias bomb fills it at once. */
export const MOST_VALUES = 200_000;

/** How deep lists and groups may stand inside each other: the deepest the files need is six. */
export const DEEPEST_NESTING = 40;

/** Cuts on one panel's edge: a shop makes two or three. */
export const MOST_CUTS = 12;

/** Lines and arcs in all the outlines of a job: a finely scanned profile has some thousands. */
export const MOST_PIECES = 6000;

/** Lines and arcs in all shaped heads that are outlines: the parallel of each is taken some ten times. */
export const MOST_HEAD_PIECES = 2000;

/** Entries under doors: each costs about 0.3 ms of processor time, and any job is to be answered within 2 s on a busy machine. */
export const MOST_DOORS = 3000;
