import '../shared/table-register.ts';
import { PairingCellElement } from './pairing-cell.ts';

customElements.define('sw-pairing-cell', PairingCellElement);
