import { checkLogo, LOGO, NO_PICTURE, tooSteep } from '@fielded/exchange';

/** A logo that cannot be used, and what to do: sentences without their full stops. */
interface LogoRefusal {
  readonly refused: string;
  readonly instead: string;
}

/**
 * Draws a logo as a new PNG, by the rules of the command line, so that nothing but a picture reaches a document. An SVG is drawn
 * as an image: the browser runs no script of it and fetches nothing for it.
 */
export async function drawLogo(bytes: Uint8Array): Promise<Blob | LogoRefusal> {
  const checked = checkLogo(bytes);
  if ('refused' in checked) return checked;
  try {
    const image = new Image();
    const source = 'svg' in checked ? sizedSvg(checked.svg) : bytes;
    const type = 'svg' in checked ? 'image/svg+xml' : `image/${checked.pixels.type}`;
    const url = URL.createObjectURL(new Blob([source as BlobPart], { type }));
    image.src = url;
    await image.decode().finally(() => URL.revokeObjectURL(url));
    const { naturalWidth, naturalHeight } = image;
    const steep = tooSteep(naturalWidth, naturalHeight);
    if (steep !== null) return steep;
    const width = 'svg' in checked ? LOGO.drawnWidth : Math.min(LOGO.drawnWidth, naturalWidth);
    return await paint(image, width, Math.max(1, Math.round((width * naturalHeight) / naturalWidth)));
  } catch {
    return NO_PICTURE;
  }
}

/** The SVG with its size written out: some browsers paint none without. */
function sizedSvg(svg: string): string {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  if (root.localName !== 'svg') throw new RangeError('not an SVG');
  const box = (root.getAttribute('viewBox') ?? '').split(/[\s,]+/).map(Number);
  const measure = (name: 'width' | 'height', i: number) => {
    const own = /^\s*([\d.]+)/.exec(root.getAttribute(name) ?? '')?.[1];
    const isShare = root.getAttribute(name)?.includes('%') === true;
    return own === undefined || isShare ? box[i]! : Number(own);
  };
  const [width, height] = [measure('width', 2), measure('height', 3)];
  if (!(width > 0 && height > 0)) throw new RangeError('no size');
  if (!root.hasAttribute('viewBox')) root.setAttribute('viewBox', `0 0 ${width} ${height}`);
  const drawn = LOGO.drawnWidth;
  root.setAttribute('width', String(drawn));
  root.setAttribute('height', String((drawn * height) / width));
  return new XMLSerializer().serializeToString(root);
}

function paint(image: HTMLImageElement, width: number, height: number): Promise<Blob> {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d')?.drawImage(image, 0, 0, width, height);
  return new Promise((settle, fail) =>
    canvas.toBlob((blob) => (blob ? settle(blob) : fail(new Error('no picture'))), 'image/png'),
  );
}
