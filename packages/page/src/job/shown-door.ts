import { type Signal, signal } from '@preact/signals';

/** Which of the job's doors is in hand, from 0: the one that is drawn. Past the last where doors were removed. */
export const shownDoor: Signal<number> = signal(0);
