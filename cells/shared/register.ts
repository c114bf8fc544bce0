import { FigureField } from './figure-field.ts';

customElements.define('sw-figure-field', FigureField);
