import { JOINT_WORDS } from './words/joint.ts';
import { VERDICT_WORDS } from './words/verdict.ts';

/** The sentences that a joint alone calls for: its problems, the verdict and the statements. A page has these from the first. */
export const JOINT_ENGLISH: typeof JOINT_WORDS & typeof VERDICT_WORDS = { ...JOINT_WORDS, ...VERDICT_WORDS };
