import { html, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { GridClipboard } from './table-clipboard.ts';
import type { GridCursor } from './table-cursor.ts';
import type { Grid } from './table-model.ts';
import { type GridUse, headCell } from './table-rows.ts';

/** What the grid element shows beside its figures, and who hears its events. */
export interface GridParts {
  readonly use: GridUse;
  /** Rows that can be shown, with or without the button for more. */
  readonly placeCount: number;
  /** Too many rows to be in the page at once: it scrolls by itself. */
  readonly isLong: boolean;
  readonly rows: unknown;
  readonly cursor: GridCursor;
  readonly clipboard: GridClipboard;
  released(): void;
  scrolled(): void;
  focused(event: FocusEvent): void;
  pointed(event: PointerEvent): void;
  left(): void;
}

/** The element of the grid: its heads, its rows, and the events of the keyboard, the pointer and the clipboard. */
export function gridElement(grid: Grid, parts: GridParts): TemplateResult {
  const { use, placeCount, isLong, cursor, clipboard } = parts;
  return html`<div class="scroll ${isLong ? 'tall' : ''}" part="scroll" @scroll=${parts.scrolled}>
    <table role="grid" aria-label=${grid.title}
      aria-multiselectable="true" aria-rowcount=${placeCount + 1} aria-colcount=${grid.columns.length}
      @click=${cursor.onClick} @dblclick=${cursor.onDoubleClick} @keydown=${cursor.onKey}
      @pointerdown=${cursor.onPointerDown} @mousedown=${cursor.onMouseDown}
      @pointerup=${parts.released} @contextmenu=${cursor.onContextMenu}
      @focusin=${parts.focused} @pointerover=${parts.pointed} @pointerleave=${parts.left}
      @copy=${clipboard.onCopy} @cut=${clipboard.onCut} @paste=${clipboard.onPaste}
      @sw-entry=${cursor.onEntry} @sw-done=${cursor.onDone}>
      <thead role="rowgroup"><tr role="row" aria-rowindex="1">
        ${repeat(
          grid.columns,
          (column) => column.id,
          (column, place) => headCell(column, place, use),
        )}
      </tr></thead>
      <tbody role="rowgroup">${parts.rows}</tbody>
    </table>
  </div>`;
}
