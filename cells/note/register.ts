import { NoteCellElement } from './note-cell.ts';

customElements.define('sw-note-cell', NoteCellElement);
