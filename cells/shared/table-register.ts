import { TableView } from './table-view.ts';

// Tables and pairings both bring this file in; it runs once. The shell brings the settings of columns later.
customElements.define('sw-table-view', TableView);
