import { setIfOther } from './svg-element.ts';

/** The dimensions of a drawing as one stop of the Tab key, and its grips as another. */
export interface AlongDrawing {
  /** Marks those that Tab comes to; call it when dimensions or grips have come or gone. */
  mark(): void;
  close(): void;
}

const KINDS = ['dimension', 'grip'] as const;

/** Tab comes to the dimension and to the grip that were left, at first to the first ones; other keys go from one to another (`shell/keys.ts`). */
export function goAlongDrawing(sheet: HTMLElement): AlongDrawing {
  const stops = new Map<string, string | undefined>();
  const nameOf = ({ dataset }: SVGElement) => dataset.of ?? dataset.handle;
  const mark = () => {
    for (const kind of KINDS) {
      const all = [...sheet.querySelectorAll<SVGElement>(`.${kind}`)];
      const left = all.find((each) => nameOf(each) === stops.get(kind)) ?? all[0];
      for (const each of all) setIfOther(each, 'tabindex', each === left ? '0' : '-1');
    }
  };
  const enter = ({ target }: FocusEvent) => {
    const entered = target as SVGElement;
    const kind = KINDS.find((each) => entered.classList.contains(each));
    if (kind === undefined) return;
    stops.set(kind, nameOf(entered));
    mark();
  };
  // Heard on the sheet: a drawing that listens for the focus could be given it in some browsers.
  sheet.addEventListener('focusin', enter);
  return { mark, close: () => sheet.removeEventListener('focusin', enter) };
}
