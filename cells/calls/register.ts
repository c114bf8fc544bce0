import { CallChoices } from './call-choices.ts';
import { CallsCellElement } from './calls-cell.ts';

customElements.define('sw-calls-cell', CallsCellElement);
customElements.define('sw-call-choices', CallChoices);
