/** One line of what just happened, or what went wrong. */
export interface Notice {
  readonly text: string;
  readonly kind: 'note' | 'fault';
  readonly lines?: readonly string[];
  /** Something that can be done about it. */
  readonly action?: {
    readonly name: string;
    readonly run: () => void;
    /** It takes back what was done, as the keys of undo then do too. */
    readonly undoes?: true;
  };
}
