import type { Fault } from '../../src/formula/fault.ts';
import { waitsFor } from './table-faults.ts';

/** Space between the figure and its note, and between the note and the edge of the window, in px. */
const GAP_PX = 4;
const EDGE_PX = 12;

/**
 * The note that says what is wrong with one figure, while the pointer or the keyboard is on it. It is a
 * popover, so that neither the scrolling table nor the tally hides it.
 */
export class TableTip {
  readonly #note: () => HTMLElement | null;
  #anchor: HTMLElement | null = null;

  constructor(note: () => HTMLElement | null) {
    this.#note = note;
  }

  /** Show `text` under `anchor`; over it where there is no room below. */
  show(anchor: HTMLElement, text: string): void {
    const note = this.#note();
    if (note === null || typeof note.showPopover !== 'function') return;
    this.#anchor = anchor;
    note.textContent = text;
    if (!note.matches(':popover-open')) note.showPopover();
    this.#place(note, anchor);
  }

  /** What is wrong with a figure, or nothing where nothing is. */
  showFault(anchor: HTMLElement | null, fault: Fault | null): void {
    if (fault === null || anchor === null) this.hide();
    else if (fault.kind === 'waits') this.show(anchor, `This figure ${waitsFor(fault)}.`);
    else this.show(anchor, fault.mend === undefined ? fault.message : `${fault.message}\n${fault.mend}`);
  }

  hide(): void {
    this.#anchor = null;
    const note = this.#note();
    if (note !== null && typeof note.hidePopover === 'function' && note.matches(':popover-open')) {
      note.hidePopover();
    }
  }

  get anchor(): HTMLElement | null {
    return this.#anchor;
  }

  #place(note: HTMLElement, anchor: HTMLElement): void {
    const at = anchor.getBoundingClientRect();
    const size = note.getBoundingClientRect();
    const below = at.bottom + GAP_PX;
    const top = below + size.height + EDGE_PX > innerHeight ? at.top - size.height - GAP_PX : below;
    const left = Math.max(EDGE_PX, Math.min(at.left, innerWidth - size.width - EDGE_PX));
    note.style.setProperty('left', `${left}px`);
    note.style.setProperty('top', `${Math.max(EDGE_PX, top)}px`);
  }
}
