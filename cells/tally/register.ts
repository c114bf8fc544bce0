import { TallyCellElement } from './tally-cell.ts';

customElements.define('sw-tally-cell', TallyCellElement);
