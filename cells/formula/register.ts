import { FormulaCellElement } from './formula-cell.ts';

customElements.define('sw-formula-cell', FormulaCellElement);
