import { ENGLISH } from './english.ts';
import { FAULT_ENGLISH } from './say-fault.ts';
import { TEXT_WORDS } from './words/text.ts';

/** Every sentence there is, problems', reports' and faults': what a language may say in words of its own. */
export const ALL_ENGLISH: Readonly<Record<string, string>> = { ...ENGLISH, ...FAULT_ENGLISH, ...TEXT_WORDS };
