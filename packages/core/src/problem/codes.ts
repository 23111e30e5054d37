/** Every code of a problem that `sayProblem` gives, with how bad it is. docs/problem-codes.md explains each. */
export const SEVERITIES = {
  'no-tongue': 'error',
  'split-edge': 'error',
} as const;

export type ProblemCode = keyof typeof SEVERITIES;
