/** Hands a file to the browser to be saved. */
export function handOver(name: string, content: BlobPart, type: string): void {
  const url = URL.createObjectURL(new Blob([content], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser takes the file up after the click.
  setTimeout(() => URL.revokeObjectURL(url), 30_000);
}

/** A file's name made from a title: plain letters, figures and hyphens. @example fileName('Boot-room doors', 'svg') // 'boot-room-doors.svg' */
export function fileName(title: string, ending: string): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${plain || 'job'}.${ending}`;
}
