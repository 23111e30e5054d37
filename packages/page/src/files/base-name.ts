/** The name of a file without the folders before it, whichever way their strokes lean. */
export function baseName(path: string): string {
  return path.replace(/^.*[\\/]/, '');
}
