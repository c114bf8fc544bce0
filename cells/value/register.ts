import { ValueCellElement } from './value-cell.ts';
import { ValueSettings } from './value-settings.ts';

customElements.define('sw-value-cell', ValueCellElement);
customElements.define('sw-value-settings', ValueSettings);
