import type { nothing, TemplateResult } from 'lit';
import type { PictureCell } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';

/** What a picture of one shape needs of its card. */
export interface PictureHost {
  readonly notebook: LiveNotebook;
  readonly renderRoot: HTMLElement | DocumentFragment;
  /** Width of the card's inside, in px; 0 before it is known. */
  readonly widthPx: number;
  requestUpdate(): void;
  pickRow(node: string, row: number): void;
  keep(cell: PictureCell): void;
}

/** One shape of picture: what it shows, and what it draws by hand once that stands on the page. */
export interface Picture {
  /** Drop-down or words in the head. */
  head(cell: PictureCell): TemplateResult | typeof nothing;
  body(cell: PictureCell): TemplateResult;
  /** After each drawing of the card; `atOnce` for paper, which waits for no later turn. */
  drawn(cell: PictureCell, atOnce?: boolean): void;
}
