import { html, nothing, type TemplateResult } from 'lit';
import type { Fault } from '../../src/formula/fault.ts';
import type { EntryColumn } from './figure-field.ts';
import { cautionIcon, faultIcon } from './icons.ts';
import { shareBar, surfaceLine } from './table-draw.ts';
import { shortReason, waitsFor } from './table-faults.ts';
import { figureText, optionsOf, shareAt } from './table-figure.ts';
import type { GridPlace } from './table-keys.ts';
import { type Grid, type GridColumn, needsCaution } from './table-model.ts';

/** What of the grid is under the keyboard, being written, open or picked. */
export interface GridUse {
  /** Where the keyboard is, or would enter. */
  readonly at: GridPlace;
  readonly writing: GridPlace | null;
  readonly pickedRow: number | null;
  /** Column whose settings are open below. */
  readonly openColumn: string | null;
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
  const words = html`<span class="t">${column.title}</span>${unitLine(column)}`;
  const reached = use.at.row === -1 && use.at.column === place ? 0 : -1;
  const inside = column.own
    ? html`<button type="button" data-row="-1" data-col=${place} tabindex=${reached}
        aria-expanded=${use.openColumn === column.id ? 'true' : 'false'}
        title="Change this column">${words}</button>`
    : html`<div data-row="-1" data-col=${place} tabindex=${reached}>${words}</div>`;
  return html`<th scope="col" role="columnheader" class=${classes} aria-colindex=${place + 1}>${inside}</th>`;
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

function entryColumn(column: GridColumn): EntryColumn {
  const entered = column.entered!;
  return { kind: entered.kind, unit: entered.unit, options: optionsOf(entered) ?? undefined };
}

function field(grid: Grid, column: GridColumn, row: number, content: unknown): TemplateResult {
  const label = `${column.title}, ${figureText(grid.columns[0]!, row)}${column.unit === '' ? '' : `, in ${column.unit}`}`;
  return html`<span class="held">${content}</span><sw-figure-field
    size="cell"
    align=${column.align}
    .entry=${column.entered?.entries[row] ?? null}
    .shown=${figureText(column, row)}
    .column=${entryColumn(column)}
    .label=${label}
  ></sw-figure-field>`;
}

function rowHead(grid: Grid, row: number, use: GridUse, again: boolean): TemplateResult {
  const column = grid.columns[0]!;
  const writing = use.writing?.row === row && use.writing.column === 0;
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
  ].join(' ');
  return html`<th scope="row" role="rowheader" class=${classes} aria-colindex="1" data-row=${row} data-col="0"
    tabindex=${use.at.row === row && use.at.column === 0 ? 0 : -1}
  >${writing ? field(grid, column, row, content) : content}</th>`;
}

function dataCell(grid: Grid, row: number, place: number, use: GridUse): TemplateResult {
  const column = grid.columns[place]!;
  const { classes, content, invalid } = cellState(column, row);
  const writing = use.writing?.row === row && use.writing.column === place;
  return html`<td role="gridcell" class="${classes} ${column.align === 'right' ? 'num' : ''} ${writing ? 'writing' : ''}"
    aria-colindex=${place + 1} data-row=${row} data-col=${place}
    tabindex=${use.at.row === row && use.at.column === place ? 0 : -1}
    aria-readonly=${column.entered === null ? 'true' : nothing}
    aria-invalid=${invalid ? 'true' : nothing}
  >${writing ? field(grid, column, row, content) : content}</td>`;
}

/** One row of the grid. */
export function gridRow(grid: Grid, row: number, use: GridUse): TemplateResult {
  const key = grid.columns[0]!;
  const again = !key.own && row > 0 && figureText(key, row) === figureText(key, row - 1);
  const classes = `${(row + 1) % 5 === 0 ? 'fifth' : ''} ${use.pickedRow === row ? 'picked' : ''}`;
  const cells: TemplateResult[] = [rowHead(grid, row, use, again)];
  for (let place = 1; place < grid.columns.length; place++) cells.push(dataCell(grid, row, place, use));
  return html`<tr role="row" class=${classes} aria-rowindex=${row + 2}
    aria-current=${use.pickedRow === row ? 'true' : nothing}>${cells}</tr>`;
}
