import { adoptStyles } from './adopt-styles.ts';
import enlarged from './enlarged.css?inline';
import forced from './forced-colours.css?inline';

adoptStyles(enlarged);
adoptStyles(forced);
