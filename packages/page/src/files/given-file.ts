/** A file as given to the page. */
export interface GivenFile {
  readonly name: string;
  readonly text: string;
  /** The bytes of a picture, whose text is empty. */
  readonly bytes?: Uint8Array;
}
