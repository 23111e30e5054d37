import type { Commands } from './command.ts';

/** Every command there is, in the order of the overview. */
export const COMMANDS: Commands = {
  check: async () => (await import('./commands/check.ts')).check,
  draw: async () => (await import('./commands/draw.ts')).draw,
  'cutting-list': async () => (await import('./commands/cutting-list.ts')).cuttingList,
  quote: async () => (await import('./commands/quote.ts')).quote,
  template: async () => (await import('./commands/template.ts')).template,
  solve: async () => (await import('./commands/solve.ts')).solve,
  knife: async () => (await import('./commands/knife.ts')).knife,
  trace: async () => (await import('./commands/trace.ts')).trace,
  match: async () => (await import('./commands/match.ts')).match,
  plan: async () => (await import('./commands/plan.ts')).plan,
  sample: async () => (await import('./commands/sample.ts')).sample,
  board: async () => (await import('./commands/board.ts')).board,
  open: async () => (await import('./commands/open.ts')).open,
  language: async () => (await import('./commands/language.ts')).language,
  completion: async () => (await import('./commands/completion.ts')).completion,
  help: async () => (await import('./commands/help.ts')).help,
};
