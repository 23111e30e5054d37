/** The largest file that is read, in characters: a large job with a scanned outline takes a tenth of it. */
export const MOST_CHARACTERS = 1_000_000;

/** Words, marks and line ends of YAML in a file: three thousand doors, a key to a line, fill half of it. Each takes some 4 µs. */
export const MOST_LEXEMES = 250_000;

/** Values in a file, counting what aliases repeat: an alias bomb fills it at once. */
export const MOST_VALUES = 200_000;

/** Faults of YAML that are looked for in a file: the rest mostly follow from the first. */
export const MOST_YAML_FAULTS = 100;

/** Faults that are put into words, the first of the file: one with more is no job. */
export const MOST_FAULTS = 2000;

/** Characters of what a fault says: no line of a report may be as long as the file it is about. */
export const LONGEST_FAULT = 600;

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

/** Panels of all doors together, with their quantities: narrow ones are shared out among blanks one by one. */
export const MOST_PANELS = 50_000;

/** Knives, heads and machines of a shop: one knife is held against another in a millisecond, and each cut is tried on every machine. */
export const MOST_KNIVES = 500;
export const MOST_HEADS = 200;
export const MOST_MACHINES = 50;
