const INCH = 25.4;

/** Paints an SVG in millimetres as a PNG of `dpi` pixels to the inch. */
export async function paintSvg(svg: string, dpi: number): Promise<Blob> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svg)}`;
  await image.decode();
  const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  const canvas = document.createElement('canvas');
  canvas.width = Math.round((Number(width) * dpi) / INCH);
  canvas.height = Math.round((Number(height) * dpi) / INCH);
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((settle, fail) => canvas.toBlob((blob) => (blob ? settle(blob) : fail(new Error('no picture')))));
}
