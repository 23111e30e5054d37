import { JOINT_ENGLISH } from './joint-english.ts';
import { createSpeaker, type Speaker } from './speaker.ts';

type JointSpeaker = Speaker<typeof JOINT_ENGLISH>;

const SPEAKER: JointSpeaker = createSpeaker(JOINT_ENGLISH);

// What speaks of a joint alone takes these instead of those of say.ts: a page then needs no other sentences for a drag.
export const sayProblem: JointSpeaker['sayProblem'] = SPEAKER.sayProblem;
export const told: JointSpeaker['told'] = SPEAKER.told;
export const say: JointSpeaker['say'] = SPEAKER.say;
