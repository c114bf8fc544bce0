import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import type { PairingCell, TableCell } from '../../src/notebook/document.ts';
import { CellElement } from './cell-element.ts';
import type { PickDetail } from './cell-events.ts';
import type { ColumnDetail, RowDetail } from './table-events.ts';
import type { TableView } from './table-view.ts';

/** What is open between the head of the card and its table. */
type Open = { readonly what: 'column'; readonly columnId: string } | { readonly what: 'new column' } | null;

/**
 * What tables and pairings share: the grid, the settings of one column over it, and a new column. Elements
 * that use it need `sw-table-view`, `sw-column-settings` and `sw-column-form` (table-register.ts).
 */
export abstract class TableCard<C extends TableCell | PairingCell> extends CellElement<C> {
  static override properties: PropertyDeclarations = {
    picked: { attribute: false },
    open: { state: true },
    atRow: { state: true },
  };

  /** What was picked last, on any card; the row of it is marked when it is on this one. */
  declare picked: PickDetail | null;
  declare protected open: Open;
  /** Row that has the keyboard, or had it last. */
  declare protected atRow: number | null;

  constructor() {
    super();
    this.picked = null;
    this.open = null;
    this.atRow = null;
  }

  protected get table(): TableView | null {
    return this.renderRoot.querySelector('sw-table-view');
  }

  override enter(): void {
    void this.table?.enter();
  }

  /** Plain actions of the last line, before "Add a column". */
  protected actions(_cell: C): unknown {
    return nothing;
  }

  /** What stands between the head and the grid, over the settings of a column. */
  protected above(_cell: C): unknown {
    return nothing;
  }

  override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const { open } = this;
    if (open?.what === 'column' && !this.cell?.columns.some((column) => column.id === open.columnId)) {
      this.open = null;
    }
  }

  protected override body(cell: C): TemplateResult {
    const { open } = this;
    return html`${this.above(cell)}
      <div @sw-close=${this.#close}>
        ${
          open?.what === 'column'
            ? html`<sw-column-settings .notebook=${this.notebook} .cellId=${cell.id} .columnId=${open.columnId}></sw-column-settings>`
            : nothing
        }
        ${
          open?.what === 'new column'
            ? html`<sw-column-form .notebook=${this.notebook} .cellId=${cell.id}></sw-column-form>`
            : nothing
        }
      </div>
      <sw-table-view exportparts="scroll, faults, foot" .notebook=${this.notebook} .cellId=${cell.id}
        .picked=${this.picked} .openColumnId=${open?.what === 'column' ? open.columnId : ''}
        @sw-column=${this.#onColumn}
        @sw-row=${(event: CustomEvent<RowDetail>) => {
          this.atRow = event.detail.row;
        }}>
        <span slot="actions" class="acts">${this.actions(cell)}
          <button type="button" class="plain" aria-expanded=${open?.what === 'new column' ? 'true' : 'false'}
            @click=${this.#newColumn}>Add a column</button></span>
      </sw-table-view>`;
  }

  #onColumn = (event: CustomEvent<ColumnDetail>): void => {
    const { columnId } = event.detail;
    const isOpen = this.open?.what === 'column' && this.open.columnId === columnId;
    this.open = isOpen ? null : { what: 'column', columnId };
  };

  #newColumn = (): void => {
    this.open = this.open?.what === 'new column' ? null : { what: 'new column' };
  };

  #close = async (): Promise<void> => {
    const columnId = this.open?.what === 'column' ? this.open.columnId : null;
    this.open = null;
    await this.updateComplete;
    await this.table?.enter(columnId);
  };
}
