/** Where the quantities of a quote come from: places in the report and in the plan. */
export const QUOTE_SOURCE_WORDS = {
  'from.wood': 'timber[{place}].order',
  'from.set-ups': 'plan.setUpCount',
  'from.no-plan': 'no plan: the shop lists no machine, or the cuts name no head',
  'from.running':
    'doors[].panels[]: 2 × (width + height) × quantity × section.cuts; doors[].parts[] for the frame’s cuts in plan.setups',
  'from.doors': 'doors[]: quantity × leaves',
  'from.finish': 'doors[]: 2 × width × height × quantity × leaves',
  'from.knives': 'knives[]: those with no knife of the shop; cuts without knife and head',
  'from.frame': 'not counted: these cuts of the frame name no head',
  'from.hours': '{from:said}, {rate}',
} as const;
