import { createSpeaker, type Speaker } from '@fielded/core';

/** What stands on the label of a sample, and on the board of every knife's sample. */
export const SAMPLE_WORDS = {
  'sample.title': '{job}: label of the sample',
  'sample.size': 'Full size; stock {stock:length}',
  'sample.groove': 'Groove {width:length} wide, {depth:length} deep, {setback:length} behind the front',
  'sample.wood': 'wood',
  'sample.date': 'date',
  'sample.measured': 'tongue measured',
  'sample.fit': 'fit of the test piece',
  'sample.shape.knife': '{shape}, knife {knife}',
  'sample.front.under': '{cut} (front, {made}): run under, depth {depth:length}, reach {reach:length}',
  'sample.front.over': '{cut} (front, {made}): run over, depth {depth:length}, reach {reach:length}',
  'sample.front.on-edge': '{cut} (front, {made}): run on edge, depth {depth:length}, reach {reach:length}',
  'sample.front.under.tilted':
    '{cut} (front, {made}): run under, spindle tilted {tilt}°, depth {depth:length}, reach {reach:length}',
  'sample.front.over.tilted':
    '{cut} (front, {made}): run over, spindle tilted {tilt}°, depth {depth:length}, reach {reach:length}',
  'sample.back.under': '{cut} (back, {made}): run under, depth {depth:length}, reach {reach:length}',
  'sample.back.over': '{cut} (back, {made}): run over, depth {depth:length}, reach {reach:length}',
  'sample.back.on-edge': '{cut} (back, {made}): run on edge, depth {depth:length}, reach {reach:length}',
  'sample.back.under.tilted':
    '{cut} (back, {made}): run under, spindle tilted {tilt}°, depth {depth:length}, reach {reach:length}',
  'sample.back.over.tilted':
    '{cut} (back, {made}): run over, spindle tilted {tilt}°, depth {depth:length}, reach {reach:length}',
  'shape.bevel': 'bevel',
  'shape.cove': 'cove',
  'shape.ovolo': 'ovolo',
  'shape.ogee': 'ogee',
  'shape.rebate': 'rebate',
  'shape.outline': 'outline',
  'board.title': '{board}: sample board',
  'board.title.part': '{board}: sample board ({sheet:count} of {of:count})',
  'board.caption': "every knife's section, face up · {scale} · {units}",
  'board.caption.part': "every knife's section, face up · {scale} · {units} ({sheet:count} of {of:count})",
  'board.sizes': '{shape}, reach {reach}, depth {depth}',
  'board.described': '{knife}: {sizes}.',
  'board.in': 'in {head}',
  'board.run.under': 'run under',
  'board.run.over': 'run over',
  'board.measured': 'taken off the steel',
  'board.kept': 'sample: {kept}',
} as const;

/** See `Speaker`. */
export const saySample: Speaker<typeof SAMPLE_WORDS>['say'] = createSpeaker(SAMPLE_WORDS).say;
