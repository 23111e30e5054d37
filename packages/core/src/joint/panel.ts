import type { OwnWood } from '../wood/species.ts';

export interface Panel {
  /** Planed thickness: what the cutters are set for. */
  readonly thickness: number;
  /** What the calliper says: what the section is computed on. */
  readonly measured: number;
  readonly species?: string;
  /** The wood's own figures, where the job or the shop gives them. */
  readonly wood?: OwnWood;
  /** Finish on each face of the tongue, mm; none where left out. */
  readonly film?: number;
  readonly sawn: 'flat' | 'quarter';
  readonly width?: number;
}
