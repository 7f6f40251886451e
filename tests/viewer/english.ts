/** Lets the viewer's modules speak English, as a page in English does. */
import { speak } from '../../src/viewer/words.ts';

await speak('en');
