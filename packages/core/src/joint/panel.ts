export interface Panel {
  /** Planed thickness: what the cutters are set for. */
  readonly thickness: number;
  /** What the calliper says: what the section is computed on. */
  readonly measured: number;
  readonly species?: string;
  readonly sawn: 'flat' | 'quarter';
  readonly width?: number;
}
