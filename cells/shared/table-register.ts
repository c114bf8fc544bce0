import { ColumnForm } from './table-column-form.ts';
import { ColumnSettings } from './table-column-settings.ts';
import { TableView } from './table-view.ts';

// Tables and pairings both bring this file in; it runs once.
customElements.define('sw-table-view', TableView);
customElements.define('sw-column-settings', ColumnSettings);
customElements.define('sw-column-form', ColumnForm);
