import { createSpeaker, type Speaker } from '@fielded/core';

/** What stands in the title block of a job's sheets, and over the drawings on them. */
export const SHEET_WORDS = {
  'sheet.cut': 'Cut {cut:count}',
  'title.cut': '{job}: cut {cut:count}',
  'sheet.door': 'Door {doors}',
  'title.sheet.door': '{job}: door {doors}',
  'sheet.doors': 'Doors {doors}',
  'title.sheet.doors': '{job}: doors {doors}',
  'sheet.panel': 'Panel',
  'title.sheet.panel': '{job}: panel',
  'sheet.count': '{count:count} off',
  'sheet.count.door': '{count:count} off, of door {doors}',
  'sheet.count.doors': '{count:count} off, of doors {doors}',
  'sheet.as-shown': 'as shown',
  'title.sheet': '{title}, sheet {sheet:count} of {of:count}',
  'field.shop': 'shop',
  'field.material': 'material',
  'field.tolerance': 'tolerance',
  'field.drawing': 'drawing',
  'field.revision': 'revision',
  'field.drawn by': 'drawn by',
  'field.scale': 'scale',
  'field.date': 'date',
  'field.sheet': 'sheet',
  'field.status': 'status',
  'tolerance.clearance': 'clearance {snug:length} to {loose:length}',
  'sheet.of': '{sheet:count} of {of:count}',
  'sheet.caution':
    'Sizes in {units}. Make a test piece first, and measure the stock: this is drawn for {stock:length}.',
} as const;

/** See `Speaker`. */
export const saySheet: Speaker<typeof SHEET_WORDS>['say'] = createSpeaker(SHEET_WORDS).say;
