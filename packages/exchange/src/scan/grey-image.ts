/** A picture in shades of grey, row by row from the top: 0 black to 255 white. */
export interface GreyImage {
  readonly width: number;
  readonly height: number;
  readonly grey: Uint8Array;
}

/** A picture read from a file; pixels to the inch across and down as the file gives them, null where it does not. */
export interface ScanImage extends GreyImage {
  readonly dpi: readonly [across: number, down: number] | null;
}

/** The shade between pixels, by straight interpolation; what lies outside the picture is its nearest pixel. */
export function shadeAt({ width, height, grey }: GreyImage, x: number, y: number): number {
  const cx = Math.min(width - 1, Math.max(0, x));
  const cy = Math.min(height - 1, Math.max(0, y));
  const x0 = Math.min(width - 2, Math.floor(cx));
  const y0 = Math.min(height - 2, Math.floor(cy));
  const fx = cx - x0;
  const fy = cy - y0;
  const at = y0 * width + x0;
  const above = grey[at]! * (1 - fx) + grey[at + 1]! * fx;
  const below = grey[at + width]! * (1 - fx) + grey[at + width + 1]! * fx;
  return above * (1 - fy) + below * fy;
}
