import { FigureField } from './figure-field.ts';
import { FormulaLine } from './formula-line.ts';

customElements.define('sw-figure-field', FigureField);
customElements.define('sw-formula-line', FormulaLine);
