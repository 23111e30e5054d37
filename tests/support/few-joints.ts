/** Joints made at random, for tests that ask little of them: 100,000, as usual, take 30 ms. */
export const FEW = { simulation: { count: 2000, seed: 1, distribution: 'normal' } } as const;
