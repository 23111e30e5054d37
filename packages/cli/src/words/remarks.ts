/** What is said on standard error beside what a command makes. */
export const REMARK_WORDS = {
  'print.more-faults.one': 'and 1 more fault.',
  'print.more-faults': 'and {count:count} more faults.',
  'print.nothing-simulated': 'Nothing was simulated: the job gives no spread. Add spread: with a ± to it.',
  'print.simulating': '{percent} % of {count:grouped} joints, Ctrl-C to end here',
  'print.no-doors': 'There are no doors to list. Add some under doors.',
  'print.first-sheet': 'Sheet 1 of {count:count}. --sheet 2 draws the next; a .pdf or .html holds them all.',
  'print.first-plan-sheet': 'Sheet 1 of {count:count}. --sheet 2 writes the next; a .pdf or .html holds them all.',
  'print.letters-missing':
    'No font on this machine has the letters {letters}: they are drawn as empty boxes. Name a font that has them with --font FILE.',
  'print.letters-missing.more':
    'No font on this machine has the letters {letters} and {count:count} more: they are drawn as empty boxes. Name a font that has them with --font FILE.',
  'print.not-written-back': 'It is left as it was: with this written into it, it could no longer be read.',
  'print.board': 'Our knives',
  'print.board.none': 'The shop has no knives to show. Add some under knives.',
  'print.knives-of-shop': 'Knives of the shop',
  'print.template.no-head': 'No door has a shaped head. Give one a head: { shape: arch, rise: 60 }.',
  'print.template.nothing.panel': 'The panel of door {door} has no outline: nothing is left of it.',
  'print.template.nothing.rail': 'The rail of door {door} has no outline: nothing is left of it.',
  'print.template.nothing.field': 'The field of door {door} has no outline: nothing is left of it.',
  'print.no-shop': 'There is no shop to plan in. Name a shop file in the job with shop:, or give one with --shop.',
  'print.no-machine':
    'The shop file has no machine. Add one under machines, with its speeds, seat, opening and nutDiameter.',
  'print.no-head':
    'No cut names a head, so there is nothing to set up. Add head: to {cut}, or a knife that is kept in one.',
  'print.no-head.no-cut':
    'No cut names a head, so there is nothing to set up. Add head: to a cut, or a knife that is kept in one.',
  'print.knife.none': 'The file has no knives. Add one under knives.',
  'print.knife.cut-without-head': 'The cut "{cut}" names no head, and what to grind depends on it. Add head: to it.',
  'print.knife.without-head': 'The knife {knife} names no head, and what to grind depends on it. Add head: to it.',
  'print.knife.unknown-head':
    'The knife {knife} is kept in the head {head}, which the shop does not describe. Describe it under heads.',
  'print.knife.unknown-head.near':
    'The knife {knife} is kept in the head {head}, which the shop does not describe. Did you mean {near}? Describe it under heads.',
} as const;
