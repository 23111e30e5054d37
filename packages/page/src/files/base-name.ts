/** The name of a file without its folders, whichever slash parts them. */
export function baseName(path: string): string {
  return path.replace(/^.*[\\/]/, '');
}
