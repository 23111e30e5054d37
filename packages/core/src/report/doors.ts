import { type DoorReport, sizeDoor } from '../door/door.ts';
import type { PreparedJob } from './prepare.ts';

/** The doors with their openings and panels; undefined where the job gives none. */
export function answerDoors({ job, tongue }: Pick<PreparedJob, 'job' | 'tongue'>): DoorReport[] | undefined {
  return job.doors.length > 0 ? job.doors.map((door) => sizeDoor(door, tongue.insertion)) : undefined;
}
