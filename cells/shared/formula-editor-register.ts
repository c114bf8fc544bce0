import { FunctionReference } from './formula-editor-reference.ts';

customElements.define('sw-function-reference', FunctionReference);
