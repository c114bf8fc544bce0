import '../shared/table-register.ts';
import { TableCellElement } from './table-cell.ts';

customElements.define('sw-table-cell', TableCellElement);
