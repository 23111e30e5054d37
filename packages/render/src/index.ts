export { type DrawOptions, draw, type SceneOptions, scene, type View } from './draw.ts';
export type { Loop } from './geometry/path.ts';
export type { GroupItem, Item, PathItem, Role, Scene, TextItem } from './scene.ts';
export { FONT_FAMILY, PALETTES, type Palette, STYLES, type Style, type Theme } from './style.ts';
export { pathData, sceneToSvg, writeNumber } from './svg.ts';
export { CAPITAL, textWidth } from './text/measure-text.ts';
export { type BoardDrawing, boardScene, drawBoard, drawBoardSheets } from './views/board.ts';
export { drawKnife, type KnifeDrawing, knifeScene } from './views/knife.ts';
export { boardPage } from './views/board-page.ts';
