import { adoptStyles } from './adopt-styles.ts';
import fonts from './fonts.css?inline';

/** Letters the page in its own font from now on. */
export function useOwnLetters(): void {
  adoptStyles(fonts);
}
