import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Fault } from '../../src/formula/fault.ts';
import { showUnit } from '../../src/formula/show.ts';
import type { EntryColumn } from './figure-field.ts';
import { cautionIcon, faultIcon } from './icons.ts';
import { setProperty } from './set-property.ts';
import { type Block, inBlock } from './table-block.ts';
import { shareBar, surfaceLine } from './table-draw.ts';
import { shortReason, waitsFor } from './table-faults.ts';
import { figureText, optionsOf, shareAt } from './table-figure.ts';
import type { GridPlace } from './table-keys.ts';
import { type Grid, type GridColumn, needsCaution, typedColumn } from './table-model.ts';
import type { RowOrder } from './table-order.ts';
import type { RowSlots } from './table-slots.ts';
import type { Segment } from './table-window.ts';

/** What of the grid is under the keyboard, being written, open or picked. */
export interface GridUse {
  /** Where the keyboard is, or would enter. */
  readonly at: GridPlace;
  readonly writing: GridPlace | null;
  readonly pickedRow: number | null;
  /** The marked figures. */
  readonly block: Block | null;
  /** Column that the rows are sorted by. */
  readonly sorted: { readonly column: string; readonly falling: boolean } | null;
  /** Column whose settings are open below. */
  readonly openColumn: string | null;
}

/** One row of the table and where it is shown. */
export interface ShownRow {
  /** Counted as it stands in the table. */
  readonly row: number;
  /** Counted as it is shown. */
  readonly place: number;
  /** The row shown above it; null for the first. */
  readonly above: number | null;
}

/** The fault of one figure, its own or one that it waits for; null when it has a figure or none. */
export function faultAt(column: GridColumn, row: number): Fault | null {
  return column.shown?.column.faults?.get(row) ?? null;
}

function unitLine(column: GridColumn): TemplateResult | typeof nothing {
  const { state } = column;
  if (state.state === 'fault') {
    return html`<span class="u bad">${faultIcon()}${shortReason(state.fault)}</span>`;
  }
  if (state.state === 'waiting') return html`<span class="u busy">${waitsFor(state.fault)}</span>`;
  return column.unit === '' ? nothing : html`<span class="u">${column.unit}</span>`;
}

/** Head of one column: its title over its unit, or over the word for its state. */
export function headCell(column: GridColumn, place: number, use: GridUse): TemplateResult {
  const classes = [
    column.align === 'right' ? 'num' : '',
    column.entered === null && column.own ? 'worked' : '',
    place === 0 ? 'stick' : '',
  ].join(' ');
  const sorted = use.sorted?.column === column.id ? (use.sorted.falling ? 'descending' : 'ascending') : null;
  const words = html`<span class="t">${column.title}${sorted === null ? nothing : html`<span class="way ${sorted}" aria-hidden="true"></span>`}</span>${unitLine(column)}`;
  const reached = use.at.row === -1 && use.at.column === place ? 0 : -1;
  const inside = column.own
    ? html`<button type="button" data-row="-1" data-col=${place} tabindex=${reached}
        aria-expanded=${use.openColumn === column.id ? 'true' : 'false'}
        title="Change this column">${words}</button>`
    : html`<div data-row="-1" data-col=${place} tabindex=${reached}>${words}</div>`;
  return html`<th scope="col" role="columnheader" class=${classes} aria-colindex=${place + 1}
    aria-sort=${sorted ?? nothing}>${inside}</th>`;
}

function drawn(column: GridColumn, row: number, text: string): unknown {
  if (column.draw === 'share' && text !== '–') {
    return html`<span class="shared">${shareBar(shareAt(column, row))}<span class="fig">${text}</span></span>`;
  }
  if (column.draw === 'surface' && text !== '–' && text !== '') return surfaceLine(text);
  if (column.align === 'left')
    return html`<span class="text fig" title=${text.length > 34 ? text : nothing}>${text}</span>`;
  return html`<span class="fig">${text}</span>`;
}

/** What stands in the cell of a figure with a fault: what was entered, or the reason in a few words. */
function faultContent(column: GridColumn, row: number, fault: Fault): TemplateResult {
  const entry = column.entered?.entries[row];
  const reason = shortReason(fault, column.entered?.kind);
  return typeof entry === 'string'
    ? html`<span class="fig">${entry}</span><span class="why">${reason}</span>`
    : html`<span class="fig">${reason}</span>`;
}

interface CellState {
  readonly classes: string;
  readonly content: unknown;
  readonly invalid: boolean;
}

function cellState(column: GridColumn, row: number): CellState {
  if (column.state.state === 'waiting' || column.state.state === 'fault') {
    const words = column.state.state === 'waiting' ? waitsFor(column.state.fault) : 'no figure';
    return { classes: 'waits', content: html`<span class="sr">${words}</span>`, invalid: false };
  }
  const fault = faultAt(column, row);
  if (fault?.kind === 'waits') {
    return { classes: 'waits', content: html`<span class="fig">waits</span>`, invalid: false };
  }
  if (fault !== null) return { classes: 'bad', content: faultContent(column, row, fault), invalid: true };
  const text = figureText(column, row);
  const classes = [
    column.entered === null && column.own ? 'worked' : '',
    column.entered !== null ? (column.align === 'right' ? 'pen-cell' : 'pen-text') : '',
    text === '–' ? 'gap' : '',
    column.state.state === 'working' ? 'old' : '',
  ].join(' ');
  return { classes, content: drawn(column, row, text), invalid: false };
}

function entryColumn(grid: Grid, column: GridColumn, row: number): EntryColumn {
  return { ...typedColumn(grid, column, row), options: optionsOf(column.entered!) ?? undefined };
}

function field(grid: Grid, column: GridColumn, row: number, content: unknown): TemplateResult {
  const unit = column.rowUnits === null ? column.unit : showUnit(column.rowUnits.at(row));
  const label = `${column.title}, ${figureText(grid.columns[0]!, row)}${unit === '' ? '' : `, in ${unit}`}`;
  return html`<span class="held">${content}</span><sw-figure-field
    size="cell"
    align=${column.align}
    .entry=${column.entered?.entries[row] ?? null}
    .shown=${figureText(column, row)}
    .column=${entryColumn(grid, column, row)}
    .label=${label}
  ></sw-figure-field>`;
}

function rowHead(grid: Grid, { row, place }: ShownRow, use: GridUse, again: boolean): TemplateResult {
  const column = grid.columns[0]!;
  const writing = use.writing?.row === place && use.writing.column === 0;
  const marked = inBlock(use.block, place, 0);
  const fault = faultAt(column, row);
  const text = fault === null ? figureText(column, row) : shortReason(fault, column.entered?.kind);
  const words = html`<span class="name" title=${text.length > 30 ? text : nothing}>${text}</span>`;
  const content = html`${words}${needsCaution(grid.caution, row) ? cautionIcon() : nothing}`;
  const classes = [
    'stick',
    again ? 'again' : '',
    writing ? 'writing' : '',
    fault !== null ? 'bad' : '',
    column.entered !== null ? 'writes' : '',
    marked ? 'marked' : '',
  ].join(' ');
  return html`<th scope="row" role="rowheader" class=${classes} aria-colindex="1" data-row=${place} data-col="0"
    tabindex=${use.at.row === place && use.at.column === 0 ? 0 : -1}
    aria-selected=${use.block === null ? nothing : marked}
  >${writing ? field(grid, column, row, content) : content}</th>`;
}

function dataCell(grid: Grid, { row, place }: ShownRow, at: number, use: GridUse): TemplateResult {
  const column = grid.columns[at]!;
  const { classes, content, invalid } = cellState(column, row);
  const writing = use.writing?.row === place && use.writing.column === at;
  const marked = inBlock(use.block, place, at);
  return html`<td role="gridcell" class="${classes} ${column.align === 'right' ? 'num' : ''} ${writing ? 'writing' : ''} ${marked ? 'marked' : ''}"
    aria-colindex=${at + 1} data-row=${place} data-col=${at}
    tabindex=${use.at.row === place && use.at.column === at ? 0 : -1}
    aria-selected=${use.block === null ? nothing : marked}
    aria-readonly=${column.entered === null ? 'true' : nothing}
    aria-invalid=${invalid ? 'true' : nothing}
  >${writing ? field(grid, column, row, content) : content}</td>`;
}

/** One row of the grid. */
function gridRow(grid: Grid, shown: ShownRow, use: GridUse): TemplateResult {
  const { row, place, above } = shown;
  const key = grid.columns[0]!;
  const again = !key.own && above !== null && figureText(key, row) === figureText(key, above);
  const classes = `${(place + 1) % 5 === 0 ? 'fifth' : ''} ${use.pickedRow === row ? 'picked' : ''}`;
  const cells: TemplateResult[] = [rowHead(grid, shown, use, again)];
  for (let at = 1; at < grid.columns.length; at++) cells.push(dataCell(grid, shown, at, use));
  return html`<tr role="row" class=${classes} aria-rowindex=${place + 2}
    aria-current=${use.pickedRow === row ? 'true' : nothing}>${cells}</tr>`;
}

type GapRow = Extract<Segment, { kind: 'gap' }>;

export interface RowsDrawing {
  readonly use: GridUse;
  readonly order: RowOrder;
  /** Height of a row, in px. */
  readonly rowPx: number;
  /** What rows of a long table are shown in; null where every row has an element of its own. */
  readonly slots: RowSlots | null;
}

/** The rows of a grid that are in view, with gaps as high as those that are not. */
export function gridRows(grid: Grid, segments: readonly Segment[], drawing: RowsDrawing): unknown {
  const { use, order, rowPx } = drawing;
  const shown = (place: number): ShownRow => ({
    row: order.rowAt(place),
    place,
    above: place === 0 ? null : order.rowAt(place - 1),
  });
  const drawn = segments.flatMap((segment): (ShownRow | GapRow)[] =>
    segment.kind === 'gap'
      ? [segment]
      : Array.from({ length: segment.to - segment.from }, (_, i) => shown(segment.from + i)),
  );
  const rows = drawn.flatMap((each) => ('row' in each ? [each.row] : []));
  const slots = drawing.slots?.take(rows) ?? rows;
  let at = 0;
  // Keyed by row or by its slot, so that the row with the keyboard stays the element that has the focus.
  const keys = drawn.map((each, i) =>
    'row' in each ? slots[at++]! : `gap ${i === 0 ? 'above' : i === drawn.length - 1 ? 'below' : 'between'}`,
  );
  const key = (_: ShownRow | GapRow, i: number): number | string => keys[i]!;
  return repeat(drawn, key, (each) => ('row' in each ? gridRow(grid, each, use) : gapRow(each, rowPx)));
}

function gapRow(gap: GapRow, rowPx: number): TemplateResult {
  const heightPx = `${gap.rows * rowPx}px`;
  return html`<tr class="gap" aria-hidden="true" ${setProperty('--gap-px', heightPx)}><td></td></tr>`;
}
