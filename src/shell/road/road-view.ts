import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { repeat } from 'lit/directives/repeat.js';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { type CardState, cardState } from '../../../cells/shared/card-state.ts';
import type { CardLink, CellElement } from '../../../cells/shared/cell-element.ts';
import { type PickDetail, pick } from '../../../cells/shared/cell-events.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { concernsAll, NotebookController } from '../../../cells/shared/notebook-controller.ts';
import { NotebookElement } from '../../../cells/shared/notebook-element.ts';
import { FIRST_CARDS } from '../../../cells/shared/out-of-sight.ts';
import type { Fault } from '../../formula/fault.ts';
import type { Cell, CellKind } from '../../notebook/document.ts';
import { CARD_KINDS } from './card-kinds.ts';
import { cellTemplate } from './cell-template.ts';
import { keepInSight } from './keep-in-sight.ts';
import { lanePieces } from './lanes.ts';
import { roadStyles } from './road-view.styles.ts';
import { linksOf, type Stop, type StopLinks, stopOf, stopsOf } from './stops.ts';
import { waymark, waymarkStyles } from './waymark.ts';
import { WaymarkDrag } from './waymark-drag.ts';

/** `sw-add`: put a new card in. */
export interface AddDetail {
  readonly kind: CellKind;
  /** Id of the stop after which it stands; null: first. */
  readonly after: string | null;
}

/** `sw-move`: a card was dragged to another place among the cards. */
export interface MoveDetail {
  readonly stop: string;
  readonly to: number;
}

/**
 * The road: one stop for each card in reading order, with its waymark, and lanes that join the selected card
 * with the cards that feed it and those it feeds.
 *
 * @prop notebook  @prop selected id of a cell on the selected card, or null  @prop picked the figure in the panel
 * @fires sw-pick {PickDetail} a card was clicked, or its waymark
 * @fires sw-open {PickDetail} a waymark was clicked: the panel is wanted
 * @fires sw-add {AddDetail}  @fires sw-move {MoveDetail}
 */
export class RoadView extends NotebookElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    selected: { attribute: false },
    picked: { attribute: false },
    opening: { attribute: false },
    adding: { state: true },
  };

  static override styles = [baseStyles, controlStyles, waymarkStyles, roadStyles];

  declare selected: string | null;
  declare picked: PickDetail | null;
  /** The page is just opening: only the stops that fill a screen are drawn, until this is taken away. */
  declare opening: boolean;
  /** Id of the stop under which the menu of kinds is open. */
  declare private adding: string | null;

  #pickedInside = false;
  /** Told once for all stops of a drawing. */
  #faults: readonly Fault[] = [];
  readonly #drag = new WaymarkDrag(this, (stop, to) => this.#moved(stop, to));

  constructor() {
    super();
    this.selected = null;
    this.picked = null;
    this.opening = false;
    this.adding = null;
    new NotebookController(this, () => this.notebook, concernsAll);
    this.addEventListener('sw-pick', () => {
      this.#pickedInside = true;
    });
    this.addEventListener('sw-rest', (event) => this.#rested(event));
  }

  /** Put the keyboard on a card as a whole. */
  focusStop(id: string): void {
    const stop = this.#element(id);
    stop?.focus({ preventScroll: true });
    if (stop) keepInSight(stop);
  }

  /** Put the keyboard inside a card. */
  enterStop(id: string): void {
    const card = this.#element(id)?.querySelector<CellElement<Cell>>('.card');
    card?.fold(false);
    void card?.updateComplete.then(() => card.enter());
  }

  /** The card that a cell stands on, opened if it was folded; null when there is none. */
  cardOf(cell: string): HTMLElement | null {
    const stop = stopOf(stopsOf(this.notebook.document), cell);
    if (!stop) return null;
    this.openCard(stop.id);
    return this.#element(stop.id)?.querySelector<HTMLElement>('.card') ?? null;
  }

  /** Open a card that is folded. */
  openCard(id: string): void {
    this.#element(id)?.querySelector<CellElement<Cell>>('.card')?.fold(false);
  }

  /** Id of the stop that holds the keyboard, and whether it stands on the stop as a whole. */
  focused(): { readonly id: string; readonly onStop: boolean } | null {
    const active = this.shadowRoot?.activeElement;
    const stop = active?.closest<HTMLElement>('.stop');
    return stop?.dataset.stop ? { id: stop.dataset.stop, onStop: active === stop } : null;
  }

  /** Open the menu of kinds under a stop. */
  openAdd(id: string): void {
    this.adding = id;
    void this.updateComplete.then(() =>
      this.#element(id)?.querySelector<HTMLElement>('.menu button')?.focus(),
    );
  }

  /** A card has ended writing: the keyboard goes back to its stop. */
  #rested(event: Event): void {
    const inside = event.composedPath().find((one) => one instanceof HTMLElement && one.matches('.stop'));
    if (inside instanceof HTMLElement) inside.focus({ preventScroll: true });
  }

  #element(id: string): HTMLElement | null {
    return this.renderRoot.querySelector(`.stop[data-stop="${CSS.escape(id)}"]`);
  }

  override render(): unknown {
    if (!this.notebook) return nothing;
    this.#faults = this.notebook.faults();
    const stops = stopsOf(this.notebook.document);
    const selected = stopOf(stops, this.selected);
    const joined = selected
      ? joinedTo(
          stops,
          selected,
          linksOf(stops, selected, (id) => this.notebook.links(id)),
        )
      : null;
    return html`<div class="road">
      ${repeat(
        this.opening ? stops.slice(0, FIRST_CARDS) : stops,
        (stop) => stop.id,
        (stop, at) => this.#stop(stop, at, joined),
      )}
      ${this.opening ? nothing : this.#foot(stops)}
    </div>`;
  }

  #foot(stops: readonly Stop[]): TemplateResult {
    return html`<div class="stop">
        <div class="rail"></div>
        <section class="add" aria-label="Add a card">
          <p>The road goes on with</p>
          <ul>
            ${CARD_KINDS.map(({ kind, word, gist }) => html`<li><button class="plain" @click=${() => this.#add(kind, stops.at(-1)?.id ?? null)}>${word}</button> <span>${gist}</span></li>`)}
          </ul>
        </section>
      </div>`;
  }

  /** One stop, drawn again only when something that it shows has changed: an edit changes few of them. */
  #stop(stop: Stop, at: number, joined: Joined | null): unknown {
    const state = cardState(this.notebook, stop.cells, this.#faults);
    const { dragged, drop } = this.#drag.at(stop.id, at);
    const drawnFrom = [
      this.notebook,
      ...stop.cells,
      stop.title,
      at,
      state.state,
      state.words,
      dragged,
      drop,
      this.picked,
      this.adding === stop.id,
      joined?.key,
    ];
    return guard(drawnFrom, () => this.#drawStop(stop, at, state, joined));
  }

  #drawStop(stop: Stop, at: number, state: CardState, joined: Joined | null): TemplateResult {
    const isSelected = stop.id === joined?.selected.id;
    const { dragged, drop } = this.#drag.at(stop.id, at);
    return html`<section
      class="stop ${at === 0 ? 'first' : ''} ${dragged ? 'dragged' : ''}"
      role="group"
      tabindex="0"
      data-stop=${stop.id}
      aria-label="${stop.title}, ${state.words}"
      @click=${(event: Event) => this.#clicked(event, stop)}
    >
      <div class="rail">
        <button
          class="post"
          tabindex="-1"
          aria-label="${stop.title}: open in the panel, or drag to move"
          @click=${(event: Event) => this.#open(event, stop)}
          @pointerdown=${(event: PointerEvent) => this.#drag.start(event, stop.id)}
        >
          ${waymark(state.state, isSelected)}
        </button>
        ${joined ? this.#lanes(at, joined) : nothing}
      </div>
      ${cellTemplate(stop, {
        notebook: this.notebook,
        selected: isSelected,
        link: linkOf(stop, joined),
        picked: this.picked,
      })}
      ${drop ? html`<div class="drop ${drop}"></div>` : nothing} ${this.#between(stop)}
    </section>`;
  }

  #lanes(at: number, { center, feeders, readers }: Joined): TemplateResult {
    return html`${lane('in', lanePieces(at, center, feeders), at === center)}${lane('out', lanePieces(at, center, readers), at !== center)}`;
  }

  #between(stop: Stop): TemplateResult {
    const open = this.adding === stop.id;
    return html`<div class="between ${open ? 'open' : ''}" @click=${(event: Event) => event.stopPropagation()} @keydown=${(event: KeyboardEvent) => this.#menuKey(event, stop)}>
      <button class="plain" tabindex="-1" aria-expanded=${open ? 'true' : 'false'} @click=${() => {
        this.adding = open ? null : stop.id;
      }}>Add here<span class="sr">, after ${stop.title}</span></button>
      ${open ? this.#menu(stop) : nothing}
    </div>`;
  }

  #menu(stop: Stop): TemplateResult {
    return html`<div class="menu">
      ${CARD_KINDS.map(({ kind, word, gist }) => html`<button @click=${() => this.#add(kind, stop.id)}>${word}<small>${gist}</small></button>`)}
    </div>`;
  }

  #menuKey(event: KeyboardEvent, stop: Stop): void {
    if (event.key !== 'Escape' || this.adding !== stop.id) return;
    event.preventDefault();
    event.stopPropagation();
    this.adding = null;
    this.focusStop(stop.id);
  }

  #add(kind: CellKind, after: string | null): void {
    this.adding = null;
    this.dispatchEvent(
      new CustomEvent<AddDetail>('sw-add', { detail: { kind, after }, bubbles: true, composed: true }),
    );
  }

  #moved(stop: string, to: number): void {
    this.dispatchEvent(
      new CustomEvent<MoveDetail>('sw-move', { detail: { stop, to }, bubbles: true, composed: true }),
    );
  }

  #clicked(event: Event, stop: Stop): void {
    const inside = this.#pickedInside;
    this.#pickedInside = false;
    this.adding = null;
    if (inside || event.defaultPrevented || stopOf([stop], this.selected)) return;
    pick(this, { cell: stop.id, node: null, row: null });
    this.#pickedInside = false;
  }

  #open(event: Event, stop: Stop): void {
    event.stopPropagation();
    if (this.#drag.consumeClick()) return;
    const detail: PickDetail = { cell: stop.id, node: null, row: null };
    this.dispatchEvent(new CustomEvent<PickDetail>('sw-open', { detail, bubbles: true, composed: true }));
  }
}

/** The selected stop, and how the others are joined to it; places are in the order of the road. */
interface Joined {
  readonly selected: Stop;
  readonly links: StopLinks;
  readonly center: number;
  readonly feeders: readonly number[];
  readonly readers: readonly number[];
  /** Equal for equal lanes and links. */
  readonly key: string;
}

function joinedTo(stops: readonly Stop[], selected: Stop, links: StopLinks): Joined {
  const places = (ids: readonly string[]): readonly number[] =>
    ids.map((id) => stops.findIndex((stop) => stop.id === id));
  const center = stops.indexOf(selected);
  const [feeders, readers] = [places(links.fedBy), places(links.feeds)];
  const key = [selected.id, selected.title, center, feeders, readers].join(';');
  return { selected, links, center, feeders, readers, key };
}

function linkOf(stop: Stop, joined: Joined | null): CardLink | null {
  if (!joined) return null;
  const { links, selected } = joined;
  if (links.fedBy.includes(stop.id)) return { way: 'feeds', to: selected.title };
  return links.feeds.includes(stop.id) ? { way: 'fed-by', to: selected.title } : null;
}

function lane(side: 'in' | 'out', pieces: ReturnType<typeof lanePieces>, arrives: boolean): TemplateResult {
  const piece = (shape: string): TemplateResult => html`<i class="lane ${side} ${shape}"></i>`;
  const arrow = arrives ? 'arrow' : '';
  const straight = pieces.through
    ? piece('run')
    : html`${pieces.above ? piece('lead') : nothing}${pieces.below ? piece('tail') : nothing}`;
  return html`${straight}${pieces.bendUp ? piece(`bend-up ${arrow}`) : nothing}${pieces.bendDown ? piece(`bend-down ${arrow}`) : nothing}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-road': RoadView;
  }
  interface HTMLElementEventMap {
    'sw-open': CustomEvent<PickDetail>;
    'sw-add': CustomEvent<AddDetail>;
    'sw-move': CustomEvent<MoveDetail>;
  }
}
