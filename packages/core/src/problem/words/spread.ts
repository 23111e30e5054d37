/** What is said of a spread: the shares of the verdicts, and how to run the cuts. */
export const SPREAD_WORDS = {
  'spread-too-large.slid':
    'The spread is left out: {pieces:count} lines and arcs in {cuts:count} cuts take too long to work out. Draw the profiles with fewer.',
  'spread-too-large.recut':
    'The spread is left out: a profile leaves a lip over wood that it clears, so every joint is cut anew, and {pieces:count} lines and arcs take too long. Draw the profiles with {most:count} at most.',
  'fewer-joints':
    'Only {count:grouped} joints are made at random instead of the usual {usual:grouped}: these cuts have so many lines and arcs that more would take long. `fielded check --simulate {usual:count}` makes them all.',
  'worst-searched':
    'A profile leaves a lip over wood that it clears, so the very worst of the spread is the worst of the joints that were tried, not proved: there may be a worse one. Allow for a little more.',
  'shares.normal':
    'Of {count:grouped} joints made at random, {bind:share} bind, {tight:share} are tight, {slide:share} slide, {rattle:share} rattle (each ± three deviations of a normal spread; seed {seed:count}).',
  'shares.uniform':
    'Of {count:grouped} joints made at random, {bind:share} bind, {tight:share} are tight, {slide:share} slide, {rattle:share} rattle (each ± spread evenly; seed {seed:count}).',
  'shares.bottom-out':
    'In {share:share} the panel bottoms out in the groove: it is too large, and the frame does not close on it.',
  'figure.share': '{share:share}',
  'runs.under': '{cut} under',
  'runs.over': '{cut} over',
  'runs.on-edge': '{cut} on edge',
  'runs.keep.face-down.both': 'Keep the panel face down for both cuts ({runs:list}).',
  'runs.keep.face-up.both': 'Keep the panel face up for both cuts ({runs:list}).',
  'runs.keep.face-down.all': 'Keep the panel face down for every cut ({runs:list}).',
  'runs.keep.face-up.all': 'Keep the panel face up for every cut ({runs:list}).',
  'runs.keep.front.on-edge-too.both':
    "Keep the panel's face on the table, and on edge against the fence, for both cuts ({runs:list}).",
  'runs.keep.back.on-edge-too.both':
    "Keep the panel's back on the table, and on edge against the fence, for both cuts ({runs:list}).",
  'runs.keep.front.on-edge-too.all':
    "Keep the panel's face on the table, and on edge against the fence, for every cut ({runs:list}).",
  'runs.keep.back.on-edge-too.all':
    "Keep the panel's back on the table, and on edge against the fence, for every cut ({runs:list}).",
  'runs.list': '{runs:list}',
  'runs.run': 'Run {runs:list}.',
  'stock.no-longer':
    'Stock thickness then no longer matters, and at the very worst the clearance differs by {best:length} instead of {given:length}.',
  'stock.less':
    'Stock thickness then matters less, and at the very worst the clearance differs by {best:length} instead of {given:length}.',
  'stock.then-out': 'Stock thickness then no longer matters to the clearance.',
  'stock.out': 'Stock thickness does not matter to the clearance as the cuts are run.',
  'stock.one-for-one':
    'Stock thickness goes one for one into the clearance, and no other way to run the cuts changes that. Plane all the stock to one thickness.',
  'stock.in-part':
    'Stock thickness goes in part into the clearance, and no other way to run the cuts changes that. Plane all the stock to one thickness.',
} as const;
