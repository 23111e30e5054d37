import { adoptStyles } from './adopt-styles.ts';
import styles from './forced-colours.css?inline';

adoptStyles(styles);
