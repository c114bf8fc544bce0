import { ValueCellElement } from './value-cell.ts';

customElements.define('sw-value-cell', ValueCellElement);
