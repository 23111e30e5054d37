import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/** What is in sight when a phone or tablet is turned still is afterwards; a field that is typed in goes before it. */
export function useStayInSight(part: RefObject<Element | null>): void {
  useEffect(() => {
    let inSight = false;
    const watch = new IntersectionObserver((entries) => {
      inSight = entries.at(-1)!.isIntersecting;
    });
    watch.observe(part.current!);
    const turned = matchMedia('(orientation: portrait)');
    const stay = () => {
      if (!inSight || document.activeElement?.matches('input, textarea')) return;
      // Once the page is laid out anew.
      requestAnimationFrame(() => part.current?.scrollIntoView({ block: 'center', behavior: 'instant' }));
    };
    turned.addEventListener('change', stay);
    return () => {
      watch.disconnect();
      turned.removeEventListener('change', stay);
    };
  }, []);
}
