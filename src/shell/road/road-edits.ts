import type { LitElement } from 'lit';
import type { PickDetail } from '../../../cells/shared/cell-events.ts';
import { addCell, group } from '../../notebook/edits.ts';
import { firstCards } from '../first-cards.ts';
import type { CardAction } from '../panel/card-slip.ts';
import type { Session } from '../session/session.ts';
import { moveStop, removeStop } from './move-stop.ts';
import { newCell } from './new-cell.ts';
import type { AddDetail, RoadView } from './road-view.ts';
import { type Stop, stopOf } from './stops.ts';

/** What the edits of the road need of the page. */
export interface RoadPage {
  readonly session: Session | null;
  readonly stops: readonly Stop[];
  /** The card that is selected, or that holds the keyboard. */
  readonly stop: Stop | undefined;
  readonly road: RoadView | null;
  picked: PickDetail | null;
  notice: string;
  say(text: string): void;
}

/** Adds, moves and removes the cards of the road; the keyboard goes where the card goes. */
export class RoadEdits {
  readonly #page: RoadPage & LitElement;

  constructor(page: RoadPage & LitElement) {
    this.#page = page;
  }

  /** Begins an empty notebook with the cards of one way in. */
  begin(way: Parameters<typeof firstCards>[0]): void {
    const { session } = this.#page;
    if (!session) return;
    const { notebook } = session;
    const cells = firstCards(way);
    // All made for the empty notebook: each goes in after the ones before it.
    const edits = cells.map((cell, at) => ({
      ...addCell(notebook.document, cell, at),
      after: { item: cell, at },
    }));
    notebook.apply(
      group(`${cells[0]?.kind === 'value' ? 'Trip values' : (cells[0]?.title ?? '')} added`, edits as never),
    );
  }

  add({ kind, after }: AddDetail): void {
    const page = this.#page;
    if (!page.session) return;
    const { notebook } = page.session;
    const made = newCell(notebook.document, kind);
    if ('needs' in made) {
      page.notice = made.needs;
      return;
    }
    const last = stopOf(page.stops, after)?.cells.at(-1);
    notebook.apply(
      addCell(notebook.document, made.cell, last ? notebook.document.cells.indexOf(last) + 1 : 0),
    );
    page.picked = { cell: made.cell.id, node: null, row: null };
    this.#focusDrawn(made.cell.id);
  }

  move(stopId: string, to: number): void {
    const { session, stops } = this.#page;
    const stop = stops.find((one) => one.id === stopId);
    const edit = session && stop ? moveStop(session.notebook.document, stop, to) : null;
    if (!session || !stop || !edit) return;
    session.notebook.apply(edit);
    this.#page.say(`${stop.title} moved`);
    this.#focusDrawn(stopId);
  }

  /** What is asked in the panel of the card that is selected. */
  act(action: CardAction): void {
    const { session, stop, stops, road } = this.#page;
    if (!stop || !session) return;
    const at = stops.findIndex((one) => one.id === stop.id);
    if (action === 'move-up') this.move(stop.id, at - 1);
    else if (action === 'move-down') this.move(stop.id, at + 1);
    else if (action === 'add-below') road?.openAdd(stop.id);
    else {
      const next = stops[at + 1] ?? stops[at - 1];
      session.notebook.apply(removeStop(session.notebook.document, stop));
      this.#page.say(`${stop.title} removed; Undo puts it back`);
      if (next) void this.#page.updateComplete.then(() => this.#page.road?.focusStop(next.id));
    }
  }

  /** Gives the keyboard to a card that the road has yet to draw. */
  #focusDrawn(stopId: string): void {
    void this.#page.updateComplete.then(async () => {
      await this.#page.road?.updateComplete;
      this.#page.road?.focusStop(stopId);
    });
  }
}
