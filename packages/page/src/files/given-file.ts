/** A file as given to the page. */
export interface GivenFile {
  readonly name: string;
  readonly text: string;
}
