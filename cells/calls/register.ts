import { CallsCellElement } from './calls-cell.ts';

customElements.define('sw-calls-cell', CallsCellElement);
