/** `sw-pick`: a figure, a row or a card was selected; the shell opens the panel on it. */
export interface PickDetail {
  /** Name of the figure, 'budget' or 'wear.rate'; null when the card as a whole is picked. */
  readonly node: string | null;
  /** Row of the table, counted from 0; null for a single figure or a whole column. */
  readonly row: number | null;
  /** Id of the cell. */
  readonly cell: string;
}

/** `sw-says`: one sentence to be read out politely. */
export interface SaysDetail {
  readonly text: string;
}

/** Tell the shell that something was picked. Example: `pick(this, { node: 'wear.rate', row: 3, cell: id })`. */
export function pick(from: EventTarget, detail: PickDetail): void {
  from.dispatchEvent(new CustomEvent<PickDetail>('sw-pick', { detail, bubbles: true, composed: true }));
}

/** Have one sentence read out politely, once. Example: `says(this, 'Row 3 removed')`. */
export function says(from: EventTarget, text: string): void {
  from.dispatchEvent(
    new CustomEvent<SaysDetail>('sw-says', { detail: { text }, bubbles: true, composed: true }),
  );
}

declare global {
  interface HTMLElementEventMap {
    'sw-pick': CustomEvent<PickDetail>;
    'sw-says': CustomEvent<SaysDetail>;
  }
}
