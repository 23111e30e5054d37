import type { WordPicture } from '@fielded/exchange';
import { type Scene, sceneToSvg } from '@fielded/render';
import { writePng } from './png.ts';

/** Fine enough for a printed page. */
const DPI = 250;

/** A drawing for a word processor: as SVG, with the same as pixels beside. */
export function wordPicture(scene: Scene): WordPicture {
  return {
    svg: sceneToSvg(scene, { theme: 'print', bare: true }),
    png: writePng(scene, DPI, { theme: 'print', bare: true }),
    width: scene.width,
    height: scene.height,
    alt: scene.title,
  };
}
