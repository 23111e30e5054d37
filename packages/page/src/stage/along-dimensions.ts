/** The dimensions of a drawing as one stop of the Tab key. */
export interface AlongDimensions {
  /** Marks the one that Tab comes to; call it when dimensions have come or gone. */
  mark(): void;
  close(): void;
}

/** Tab comes to the dimension that was left, at first to the first one; the arrow keys go from one to another (`shell/keys.ts`). */
export function goAlongDimensions(sheet: HTMLElement): AlongDimensions {
  let stop = '';
  const mark = () => {
    const dimensions = [...sheet.querySelectorAll<SVGElement>('.dimension')];
    const left = dimensions.find((each) => each.dataset.of === stop) ?? dimensions[0];
    for (const each of dimensions) each.setAttribute('tabindex', each === left ? '0' : '-1');
  };
  const enter = ({ target }: FocusEvent) => {
    const dimension = target as SVGElement;
    if (!dimension.classList.contains('dimension')) return;
    stop = dimension.dataset.of ?? '';
    mark();
  };
  // Heard on the sheet: a drawing that listens for the focus could be given it in some browsers.
  sheet.addEventListener('focusin', enter);
  return { mark, close: () => sheet.removeEventListener('focusin', enter) };
}
