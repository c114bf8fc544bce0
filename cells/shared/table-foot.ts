import { html, nothing, type TemplateResult } from 'lit';
import { showCount } from '../../src/formula/show.ts';
import { faultBox } from './fault-box.ts';
import { faultIcon } from './icons.ts';
import { type TableFault, tableFaults } from './table-faults.ts';
import type { Grid } from './table-model.ts';

/** Faults of single rows that are spelled out under the table. */
const FAULTS_LISTED = 5;

const count = (n: number): string => showCount(n);
const rowsInWords = (n: number): string => `${count(n)} ${n === 1 ? 'row' : 'rows'}`;

export interface FaultListActions {
  /** Take the one-step mend of a column's formula. */
  fix(columnId: string, formula: string): void;
  openColumn(columnId: string): void;
  goTo(columnId: string, row: number): void;
}

function faultLine(each: TableFault, actions: FaultListActions): TemplateResult {
  return html`<li>
    <span class="where">${each.place}</span>
    <span>${each.entry === null ? nothing : html`<code>${each.entry}</code>`}${each.fault.message}
      <span class="mend">${each.fault.mend ?? ''}</span></span>
    <button type="button" class="plain" @click=${() => actions.goTo(each.column.id, each.row ?? 0)}>Go there</button>
  </li>`;
}

/** Under a table: a box for each column with a fault, and a list of the first single figures with one. */
export function faultList(grid: Grid, actions: FaultListActions): TemplateResult | typeof nothing {
  const { columns, rows, rowCount } = tableFaults(grid, FAULTS_LISTED);
  if (columns.length + rowCount === 0) return nothing;
  const boxes = columns.map((each) =>
    faultBox(
      each.fault,
      {
        fix: (formula) => actions.fix(each.column.id, formula),
        edit: () => actions.openColumn(each.column.id),
      },
      `${each.place}:`,
    ),
  );
  if (rowCount === 0) return html`${boxes}`;
  const words = rowCount === 1 ? 'One figure has a fault' : `${count(rowCount)} figures have a fault`;
  return html`${boxes}<div class="faults" part="faults">
    <p class="faults-head">${faultIcon()}${words}${rowCount > rows.length ? `, the first ${rows.length}` : ''}</p>
    <ul>${rows.map((each) => faultLine(each, actions))}</ul>
  </div>`;
}

export interface Foot {
  readonly rowCount: number;
  /** Rows that the lens lets through. */
  readonly placeCount: number;
  readonly rowsShown: number;
  /** Rows shown before all are asked for. */
  readonly rowsAtFirst: number;
  readonly showsAll: boolean;
  readonly foldedCount: number;
  readonly showsFolded: boolean;
  toggleAll(): void;
  toggleFolded(): void;
  readonly lensOpen: boolean;
  openLens(): void;
  /** Taps mark corners of a block. */
  readonly marking: boolean;
  toggleMarking(): void;
}

/** The last line of a table: what is not shown, and how to see it. */
export function tableFoot(foot: Foot): TemplateResult {
  const more = foot.placeCount - foot.rowsShown;
  const all = foot.showsAll
    ? `Show the first ${foot.rowsAtFirst}`
    : `Show all ${rowsInWords(foot.placeCount)}`;
  const sifted =
    foot.placeCount < foot.rowCount ? `${count(foot.placeCount)} of ${rowsInWords(foot.rowCount)} shown` : '';
  const words = more > 0 ? `${count(more)} more ${more === 1 ? 'row' : 'rows'}` : rowsInWords(foot.rowCount);
  const columns = `${foot.foldedCount} ${foot.foldedCount === 1 ? 'column' : 'columns'}`;
  const folded = foot.showsFolded ? 'Fold the working away' : `Show the working (${columns})`;
  return html`<div class="more" part="foot">
    <span>${sifted === '' ? words : more > 0 ? `${sifted}, ${words}` : sifted}</span>
    <span class="grow">
      ${
        foot.placeCount > foot.rowsAtFirst
          ? html`<button type="button" class="plain" aria-expanded=${foot.showsAll} @click=${foot.toggleAll}>${all}</button>`
          : nothing
      }
      ${
        foot.foldedCount > 0
          ? html`<button type="button" class="plain" aria-expanded=${foot.showsFolded} @click=${foot.toggleFolded}>${folded}</button>`
          : nothing
      }
      ${
        foot.rowCount > 1
          ? html`<button type="button" class="plain" aria-expanded=${foot.lensOpen} @click=${foot.openLens}>Find and sort</button>
              <button type="button" class="plain by-touch" aria-pressed=${foot.marking} @click=${foot.toggleMarking}>Mark a block</button>`
          : nothing
      }
      <slot name="actions"></slot>
    </span>
  </div>`;
}
