import type { LitElement, ReactiveController } from 'lit';
import { isWriting } from '../../cells/shared/focusable.ts';
import { type Command, commandOf } from './keyboard.ts';
import { lettersOff } from './letters.ts';
import { jumpTarget, nextFault } from './page-moves.ts';
import type { PickPage } from './page-picks.ts';
import { linksOf, type Stop, stopOf } from './road/stops.ts';

/** What the keyboard needs of the page. */
export interface Page extends PickPage {
  act(action: 'undo' | 'redo'): void;
  move(stopId: string, to: number): void;
  say(text: string): void;
  closePanel(): void;
}

/** Listens to the keys of the whole page while the page is there, and carries out what they ask. */
export class PageKeyboard implements ReactiveController {
  readonly #page: Page & LitElement;

  constructor(page: Page & LitElement) {
    this.#page = page;
    page.addController(this);
  }

  hostConnected(): void {
    document.addEventListener('keydown', this.#onKey);
  }

  hostDisconnected(): void {
    document.removeEventListener('keydown', this.#onKey);
  }

  readonly #onKey = (event: KeyboardEvent): void => {
    if (event.defaultPrevented || !this.#page.session) return;
    const focused = this.#page.road?.focused() ?? null;
    const command = commandOf(event, {
      writing: isWriting(event),
      onStop: focused?.onStop ?? false,
      inRoad: focused !== null,
      noLetters: lettersOff(),
    });
    if (command && this.#obey(command, focused?.id ?? null)) event.preventDefault();
  };

  /** True when the command was carried out, so that the browser leaves the key alone. */
  #obey(command: Command, focusedId: string | null): boolean {
    const { stops, road } = this.#page;
    const at = stops.findIndex((stop) => stop.id === focusedId);
    switch (command) {
      case 'undo':
      case 'redo':
        this.#page.act(command);
        return true;
      case 'next-stop':
      case 'previous-stop':
        return this.#step(stops[command === 'next-stop' ? at + 1 : at - 1]);
      case 'enter-card':
        if (focusedId) road?.enterStop(focusedId);
        return focusedId !== null;
      case 'leave-card':
        return this.#leave(focusedId);
      case 'move-up':
      case 'move-down':
        if (focusedId) this.#page.move(focusedId, command === 'move-up' ? at - 1 : at + 1);
        return focusedId !== null;
      case 'to-feeder':
      case 'to-reader':
        return this.#jump(command === 'to-feeder' ? 'fedBy' : 'feeds');
      case 'next-fault':
        return this.#toFault();
      case 'panel':
        return this.#swapPanel(focusedId);
    }
  }

  /** From the first or the last card Tab goes on as usual, out of the road. */
  #step(stop: Stop | undefined): boolean {
    if (!stop) return false;
    this.#page.road?.focusStop(stop.id);
    return true;
  }

  #leave(focusedId: string | null): boolean {
    const { road } = this.#page;
    if (focusedId !== null && road?.focused()?.onStop === false) {
      road.focusStop(focusedId);
      return true;
    }
    if (!this.#page.picked) return false;
    this.#page.closePanel();
    return true;
  }

  #jump(way: 'fedBy' | 'feeds'): boolean {
    const { session, stop, stops } = this.#page;
    if (!session || !stop) return false;
    const links = linksOf(stops, stop, (id) => session.notebook.links(id));
    const target = jumpTarget(stops, stop, links, way);
    if (target === null) {
      this.#page.say(way === 'fedBy' ? `Nothing feeds ${stop.title}` : `${stop.title} feeds nothing`);
      return true;
    }
    this.#page.picked = { cell: target, node: null, row: null };
    this.#page.road?.focusStop(target);
    return true;
  }

  #toFault(): boolean {
    const { session, stops } = this.#page;
    if (!session) return false;
    const fault = nextFault(session.notebook.document, session.notebook.faults(), this.#page.picked);
    if (!fault) {
      this.#page.say('No figure has a fault');
      return true;
    }
    this.#page.picked = fault;
    const stop = stopOf(stops, fault.cell);
    if (stop) this.#page.road?.focusStop(stop.id);
    return true;
  }

  #swapPanel(focusedId: string | null): boolean {
    const page = this.#page;
    const panel = page.renderRoot.querySelector('sw-side-panel');
    if (panel && page.shadowRoot?.activeElement === panel) {
      if (page.stop) page.road?.focusStop(page.stop.id);
      return true;
    }
    const focused = page.stops.find((stop) => stop.id === focusedId);
    if (focused && !stopOf([focused], page.picked?.cell ?? null)) {
      page.picked = { cell: focused.id, node: null, row: null };
    }
    page.shut = false;
    void page.updateComplete.then(() => panel?.focus());
    return true;
  }
}
