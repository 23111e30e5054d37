import { fetchPart } from '../desk/fetch-part.ts';

/** The dimensions of a drawing as one stop of the Tab key. */
export interface AlongDimensions {
  /** Marks the one that Tab comes to; call it when dimensions have come or gone. */
  mark(): void;
  close(): void;
}

type Next = typeof import('./next-dimension.ts');

/** Tab comes to the dimension that was left, at first to the first one; the arrow keys go from one to another. */
export function goAlongDimensions(sheet: HTMLElement): AlongDimensions {
  let stop = '';
  let next: Next | null = null;
  const all = () => [...sheet.querySelectorAll<SVGElement>('.dimension')];
  const mark = () => {
    const dimensions = all();
    const left = dimensions.find((each) => each.dataset.of === stop) ?? dimensions[0];
    for (const each of dimensions) each.setAttribute('tabindex', each === left ? '0' : '-1');
  };
  // Heard on the sheet: a drawing that listens for the focus could be given it in some browsers.
  const enter = ({ target }: FocusEvent) => {
    const dimension = target as SVGElement;
    if (!dimension.classList.contains('dimension')) return;
    stop = dimension.dataset.of ?? '';
    mark();
    void fetchPart(() => import('./next-dimension.ts')).then(
      (fetched) => {
        next = fetched;
      },
      // Tab and Enter go on without it.
      () => {},
    );
  };
  const listen = (event: KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const from = event.target as SVGElement;
    const to = from.classList.contains('dimension') ? next?.nextDimension(event.key, from, all()) : undefined;
    if (to === undefined) return;
    event.preventDefault();
    to.focus();
  };
  sheet.addEventListener('focusin', enter);
  sheet.addEventListener('keydown', listen);
  return {
    mark,
    close() {
      sheet.removeEventListener('focusin', enter);
      sheet.removeEventListener('keydown', listen);
    },
  };
}
