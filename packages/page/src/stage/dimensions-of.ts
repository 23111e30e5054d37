/**
 * The dimensions that show a size on any of the drawings, by the place of the size in the job file.
 *
 * @example dimensionsOf('cuts[0].profile.depth') // ['cuts[0].depth', 'cuts[0].profile.depth', 'section.cuts[0].depthCut']
 */
export function dimensionsOf(path: string): string[] {
  const [, cut, size] = /^cuts\[(\d+)\](?:\.profile)?\.(\w+)$/.exec(path) ?? [];
  if (cut !== undefined && size !== undefined) {
    const both = [`cuts[${cut}].${size}`, `cuts[${cut}].profile.${size}`];
    if (size === 'reach') return [...both, 'fit.visibleMargin'];
    return size === 'depth' ? [...both, `section.cuts[${cut}].depthCut`] : both;
  }
  if (path === 'frame.swellGap') return [path, 'tongue.insertion', 'fit.bottomGap'];
  if (path === 'panel.thickness' || path === 'panel.measured') return ['panel.thickness', 'panel.measured'];
  return [path];
}
