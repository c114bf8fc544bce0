import { ImportDialog } from './import-dialog.ts';
import { PartFinder } from './part-finder.ts';

customElements.define('sw-part-finder', PartFinder);
customElements.define('sw-import-dialog', ImportDialog);
