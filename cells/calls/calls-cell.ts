import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import type { CallsCell } from '../../src/notebook/document.ts';
import type { Edit } from '../../src/notebook/edit.ts';
import type { NotebookChange } from '../../src/notebook/live-notebook.ts';
import type { CardState } from '../shared/card-state.ts';
import { CellElement, touches } from '../shared/cell-element.ts';
import { type PickDetail, pick, says } from '../shared/cell-events.ts';
import { cautionIcon } from '../shared/icons.ts';
import { inkRule } from '../shared/ink-rule.ts';
import { tableStyles } from '../shared/sheet-table-styles.ts';
import { gridMove } from '../shared/table-keys.ts';
import { CALL_KINDS, type CallKind } from './call-kind.ts';
import { editForCall, editForForbidding, forbidRefusal, type PinRefusal, pinRefusal } from './call-pin.ts';
import { callStyles } from './call-styles.ts';
import { callsCellStyles } from './calls-cell.styles.ts';
import { byStake, firstParts, kindsOf } from './calls-order.ts';
import { type CallsReading, callOfKind, type PartCalls, readCalls } from './calls-reading.ts';
import { type CallsPlace, type CallsUse, callsHead, callsRow } from './calls-rows.ts';
import { countCalls, forbiddingInWords, hiddenInWords, partInWords } from './calls-words.ts';
import { whyDearer } from './why-dearer.ts';

/** Parts shown until all are asked for. */
const PARTS_AT_FIRST = 14;

/**
 * One call for each part: its costs by kind of call, the one in force washed and ruled in its colour and said
 * again in words, by how much it is best, and what was set by hand. 1 to 5 set a call by hand, 0 goes back to
 * the proposed one, x rules out the call under the cursor or allows it again. The order, most at stake first, is a view only.
 *
 * @prop notebook  @prop cellId id of a calls cell
 * @fires sw-pick {PickDetail} a part was selected: node NAME.call, row of the calls cell's own table
 * @fires sw-says {SaysDetail} one sentence for a screen reader
 * @csspart sheet the card  @csspart head its head  @csspart scroll what scrolls sideways  @csspart foot the last line
 */
export class CallsCellElement extends CellElement<CallsCell> {
  static override properties: PropertyDeclarations = {
    at: { state: true },
    picked: { attribute: false },
    refusal: { state: true },
    showsAll: { state: true },
    inTableOrder: { state: true },
  };

  static override styles = [CellElement.styles, tableStyles, callStyles, callsCellStyles];

  declare private at: CallsPlace;
  /** What was picked last, on any card; the part is marked when it is on this one. */
  declare picked: PickDetail | null;
  declare private refusal: PinRefusal | null;
  declare private showsAll: boolean;
  declare private inTableOrder: boolean;

  #reading: CallsReading | null = null;
  #shown: readonly PartCalls[] = [];
  #kinds: readonly CallKind[] = [];
  /** Costs as they were drawn last, by part and kind, to rule off those that changed. */
  #costs = new Map<string, string>();

  constructor() {
    super();
    this.at = { row: 0, column: 0 };
    this.picked = null;
    this.refusal = null;
    this.showsAll = false;
    this.inTableOrder = false;
  }

  override enter(): void {
    void this.#go(this.at);
  }

  protected override concerns(change: NotebookChange): boolean {
    const cell = this.cell;
    return (
      super.concerns(change) ||
      (cell !== undefined &&
        (touches(change.nodes, cell.pairing) ||
          (cell.plan !== undefined && touches(change.nodes, cell.plan))))
    );
  }

  override willUpdate(changed: PropertyValues): void {
    super.willUpdate(changed);
    const cell = this.cell;
    this.#reading = cell === undefined ? null : readCalls(this.notebook, cell);
    const parts = this.#reading?.parts ?? [];
    const ordered = this.inTableOrder ? parts : byStake(parts);
    this.#shown = this.showsAll ? ordered : firstParts(ordered, PARTS_AT_FIRST);
    this.#kinds = kindsOf(parts);
    if (this.at.row >= this.#shown.length) this.at = { ...this.at, row: Math.max(0, this.#shown.length - 1) };
  }

  override updated(changed: PropertyValues): void {
    super.updated(changed);
    const costs = new Map<string, string>();
    for (const figure of this.renderRoot.querySelectorAll<HTMLElement>('td.cost')) {
      const part = this.#shown[Number(figure.dataset.row)]?.part ?? '';
      const key = `${figure.dataset.call} ${part}`;
      const text = figure.textContent?.trim() ?? '';
      const before = this.#costs.get(key);
      if (before !== undefined && before !== text) inkRule(figure);
      costs.set(key, text);
    }
    this.#costs = costs;
  }

  protected override gistOf(cell: CallsCell): unknown {
    return cell.gist ?? (this.inTableOrder ? "in the table's order" : 'most at stake first');
  }

  protected override headNote(_cell: CallsCell): TemplateResult {
    const count = countCalls(this.#reading?.parts ?? []);
    const money = this.#reading?.money ?? '';
    // What comes and goes stands in front, so that the words that stay do not move.
    return html`${count.noneLeft === 0 ? nothing : html`<span class="bad">${count.noneLeft} with every call forbidden</span>`}
      ${count.noneMeets === 0 ? nothing : html`<span class="bad">${count.noneMeets} without a call that meets the limit</span>`}
      ${count.needPrice === 0 ? nothing : html`<span class="bad">${count.needPrice} ${count.needPrice === 1 ? 'needs' : 'need'} a price</span>`}
      ${count.waiting === 0 ? nothing : html`<span class="busy">${count.waiting} waiting</span>`}
      ${count.refused === 0 ? nothing : html`<span class="bad">${count.refused} by hand not allowed</span>`}
      ${count.forbidden === 0 ? nothing : html`<span class="hand">${count.forbidden} forbidden</span>`}
      ${count.byHand === 0 ? nothing : html`<span class="hand">${count.byHand} by hand</span>`}
      <span class="in">expected cost${money === '' ? '' : ` in ${money}`}</span><span>${count.proposed} proposed</span>`;
  }

  protected override body(cell: CallsCell, state: CardState): unknown {
    const reading = this.#reading;
    if (reading === null || reading.parts.length === 0) return this.#nothingYet(cell, state);
    const use: CallsUse = {
      kinds: this.#kinds,
      showsChance: reading.parts.some((part) => Number.isFinite(part.chance)),
      money: reading.money,
      at: this.at,
      pickedRow: this.picked?.cell === this.cellId ? this.picked.row : null,
      whyDearer: (part) => whyDearer(this.notebook, cell, part),
      refusal: this.refusal,
      closeRefusal: () => {
        this.refusal = null;
      },
    };
    return html`<div class="scroll" part="scroll"><table class="calls ${reading.working ? 'old' : ''}" role="grid"
        aria-label="${cell.title}, expected cost in ${reading.money}" aria-rowcount=${reading.parts.length + 1}
        @click=${this.#onClick} @keydown=${this.#onKey} @focusin=${this.#onFocus}>
        <colgroup><col class="k-part">${use.showsChance ? html`<col class="k-odds">` : nothing}
          ${this.#kinds.map(() => html`<col class="k-cost">`)}<col><col class="k-by"></colgroup>
        ${callsHead(use)}
        <tbody role="rowgroup">${this.#shown.map((part, row) => callsRow(part, row, use))}</tbody>
      </table></div>
      ${this.#foot(reading)}${this.#caution(reading)}`;
  }

  #nothingYet(cell: CallsCell, state: CardState): TemplateResult {
    const read = this.notebook.read(`${cell.name}.part`);
    const fault = read.state === 'fault' ? read.fault : null;
    if (fault !== null) {
      return html`<div class="fault-box"><span class="says"><b>${fault.message}</b> ${fault.mend ?? ''}</span></div>`;
    }
    const words =
      state.state === 'settled'
        ? 'No parts yet. Each row of the pairing is one call for one part.'
        : state.words;
    return html`<p class="waits-note"><span>${words}</span></p>`;
  }

  #foot(reading: CallsReading): TemplateResult {
    const { parts, money } = reading;
    const hidden = parts.filter((part) => !this.#shown.includes(part));
    const all = this.showsAll ? `Show the first ${PARTS_AT_FIRST}` : `Show all ${parts.length}`;
    const level = `Level: two calls within 2${money === '' ? '' : ` ${money}`}.`;
    return html`<div class="more" part="foot"><span>${hiddenInWords(hidden, money)} ${level}</span><span class="grow">
      ${
        parts.length > PARTS_AT_FIRST
          ? html`<button type="button" class="plain" aria-expanded=${this.showsAll} @click=${() => {
              this.showsAll = !this.showsAll;
            }}>${all}</button>`
          : nothing
      }
      <button type="button" class="plain" aria-pressed=${this.inTableOrder} @click=${() => {
        this.inTableOrder = !this.inTableOrder;
      }}>${this.inTableOrder ? 'Most at stake first' : "In the table's order"}</button>
    </span></div>`;
  }

  #caution(reading: CallsReading): TemplateResult | typeof nothing {
    const critical = reading.parts.filter((part) => part.critical).length;
    if (critical === 0) return nothing;
    const are = critical === 1 ? 'is' : 'are';
    return html`<div class="caution" part="caution"><p><b>${critical} of the ${reading.parts.length} ${are} safety-critical</b>${cautionIcon()}
      Costs alone never decide for these: past its limit a part is not proposed as Leave, whatever it would save.
      The maker's manual and local roadworthiness rules come first; in doubt, a licensed mechanic decides.</p></div>`;
  }

  // --- keyboard and pointer ---

  #placeOf(event: Event): CallsPlace | null {
    for (const target of event.composedPath()) {
      if (target instanceof HTMLElement && target.dataset.col !== undefined) {
        return { row: Number(target.dataset.row), column: Number(target.dataset.col) };
      }
    }
    return null;
  }

  async #go(place: CallsPlace): Promise<void> {
    this.at = place;
    await this.updateComplete;
    this.renderRoot
      .querySelector<HTMLElement>(`[data-row="${place.row}"][data-col="${place.column}"]`)
      ?.focus();
  }

  #onFocus = (event: FocusEvent): void => {
    const place = this.#placeOf(event);
    if (place !== null && (place.row !== this.at.row || place.column !== this.at.column)) this.at = place;
  };

  #onClick = (event: MouseEvent): void => {
    const place = this.#placeOf(event);
    if (place !== null) this.#pick(place.row);
  };

  #onKey = (event: KeyboardEvent): void => {
    const place = this.#placeOf(event);
    if (place === null) return;
    const firstColumn = this.#firstCost;
    const columns = firstColumn + this.#kinds.length + 2;
    const to = gridMove(place, event, { rows: this.#shown.length, columns, pageRows: PARTS_AT_FIRST });
    if (to !== null) void this.#go({ row: Math.max(0, to.row), column: to.column });
    else if (!this.#onCallKey(event, place)) return;
    event.preventDefault();
    event.stopPropagation();
  };

  get #firstCost(): number {
    return this.#reading?.parts.some((part) => Number.isFinite(part.chance)) ? 2 : 1;
  }

  #onCallKey(event: KeyboardEvent, place: CallsPlace): boolean {
    if (event.ctrlKey || event.metaKey || event.altKey) return false;
    const part = this.#shown[place.row];
    if (part === undefined) return false;
    if (event.key === 'Enter') {
      const kind = this.#kinds[place.column - this.#firstCost];
      if (kind === undefined) this.#pick(place.row);
      else this.#set(part, kind);
    } else if (event.key === ' ') this.#pick(place.row);
    else if (event.key === '0') this.#backToBest(part);
    else if (event.key === 'x' || event.key === 'X')
      this.#forbid(part, this.#kinds[place.column - this.#firstCost] ?? part.chosen?.kind);
    else if (/^[1-5]$/.test(event.key)) this.#set(part, CALL_KINDS[Number(event.key) - 1]!);
    else return false;
    return true;
  }

  #set(part: PartCalls, kind: CallKind): void {
    const cell = this.cell;
    if (cell === undefined) return;
    const call = callOfKind(part, kind);
    this.refusal = pinRefusal(part, call, kind);
    if (this.refusal !== null || call === null) return;
    const edit = editForCall(this.notebook.document, cell, part, call);
    if (edit !== null) this.#applyAndSay(part, edit);
  }

  #backToBest(part: PartCalls): void {
    const cell = this.cell;
    if (cell === undefined) return;
    this.refusal = null;
    const edit = editForCall(this.notebook.document, cell, part, null);
    if (edit !== null) this.#applyAndSay(part, edit);
  }

  /** Rules out the call of the kind, or allows it again. */
  #forbid(part: PartCalls, kind: CallKind | undefined): void {
    const cell = this.cell;
    if (cell === undefined || kind === undefined) return;
    const call = callOfKind(part, kind);
    this.refusal = forbidRefusal(part, call, kind);
    if (this.refusal !== null || call === null) return;
    says(this, `${part.part}: ${forbiddingInWords(call)}`);
    this.#applyAndSay(part, editForForbidding(this.notebook.document, cell, part, call));
  }

  #applyAndSay(part: PartCalls, edit: Edit): void {
    this.notebook.apply(edit);
    void this.notebook.settled().then(async () => {
      await this.updateComplete;
      const now = this.#reading?.parts.find((each) => each.part === part.part);
      if (now !== undefined) says(this, partInWords(now, this.#reading?.money ?? ''));
    });
  }

  #pick(row: number): void {
    const cell = this.cell;
    const part = this.#shown[row];
    if (cell === undefined || part === undefined) return;
    pick(this, { node: `${cell.name}.call`, row: part.row, cell: cell.id });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-calls-cell': CallsCellElement;
  }
}
