import { createSpeaker, type Speaker } from '@fielded/core';

/** What stands in the charts of a spread and of the seasons, and what the verdicts are called behind them. */
export const CHART_WORDS = {
  'view.spread': 'Spread of the clearance',
  'title.spread': '{job}: spread of the clearance',
  'view.season': 'Insertion through the year',
  'title.season': '{job}: insertion through the year',
  'band.binds': 'binds',
  'band.tight': 'tight',
  'band.slides': 'slides',
  'band.rattles': 'rattles',
  'axis.thickness': 'stock thickness, {unit}',
  'axis.clearance': 'clearance, {unit}',
  'axis.simulated': 'clearance of {count:grouped} joints made at random, {unit}',
  'axis.insertion': 'insertion, {unit}',
  'axis.moisture': 'moisture of the panel, %',
  'spread.as-run': 'as run: {runs}',
  'spread.other-ways': 'run other ways',
  'spread.worst': 'at the very worst',
  'spread.rss': 'root of squares',
  'spread.as-set': 'as set',
  'state.driest': 'driest',
  'state.made': 'as made',
  'state.dampest': 'dampest',
  'season.bottom': "groove's bottom",
  'season.mouth': "groove's mouth",
  'season.bare': 'comes out bare',
  'season.no-room': 'no room left',
  'season.moves.free':
    '{species}, {width:length} wide, free to slide: moves by {across} of its width and {thickness} of its thickness for each % of moisture (USDA Wood Handbook, table 13-5).',
  'season.moves.centre':
    '{species}, {width:length} wide, pinned at its centre: moves by {across} of its width and {thickness} of its thickness for each % of moisture (USDA Wood Handbook, table 13-5).',
  'season.moves.edge':
    '{species}, {width:length} wide, pinned along one edge: moves by {across} of its width and {thickness} of its thickness for each % of moisture (USDA Wood Handbook, table 13-5).',
  'season.hidden.left': "No bare wood shows; at the dampest {gap:length} is left at the groove's bottom.",
  'season.hidden.wide': 'No bare wood shows; at the dampest the panel is {gap:length} too wide at each edge.',
  'season.shows.left':
    "{bare:length} shows that lay in the groove when it was made; at the dampest {gap:length} is left at the groove's bottom.",
  'season.shows.wide':
    '{bare:length} shows that lay in the groove when it was made; at the dampest the panel is {gap:length} too wide at each edge.',
} as const;

/** See `Speaker`. */
export const sayChart: Speaker<typeof CHART_WORDS>['say'] = createSpeaker(CHART_WORDS).say;
