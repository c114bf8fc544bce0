import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { CallsCell } from '../../src/notebook/document.ts';
import type { NotebookChange } from '../../src/notebook/live-notebook.ts';
import { baseStyles } from '../shared/base-styles.ts';
import { touches } from '../shared/cell-element.ts';
import { says } from '../shared/cell-events.ts';
import { controlStyles } from '../shared/control-styles.ts';
import { barredIcon, faultIcon } from '../shared/icons.ts';
import { NotebookController } from '../shared/notebook-controller.ts';
import { NotebookElement } from '../shared/notebook-element.ts';
import { setProperty } from '../shared/set-property.ts';
import { callChoicesStyles } from './call-choices.styles.ts';
import { callGlyph } from './call-glyph.ts';
import { callInWords } from './call-kind.ts';
import { editForCall, editForForbidding, forbidRefusal } from './call-pin.ts';
import { type CostParts, readCostParts, stripLength } from './call-strip.ts';
import { callStyles } from './call-styles.ts';
import { type PartCall, type PartCalls, readCalls } from './calls-reading.ts';
import { fineMoney, forbiddingInWords, marginOf } from './calls-words.ts';

/**
 * The calls of one part, for the panel: each with its expected cost and a strip of what the cost is made of
 * (solid: cash; striped: work, freight and carrying; hatched: risk left on the road; dotted: life used up).
 * Choosing one sets it by hand, Forbid rules it out; a call that may not be made says why.
 *
 * @prop notebook  @prop cellId id of a calls cell
 * @prop partName name of the part (`part` itself is a property that every element has)
 * @fires sw-go {node, row, scroll} the working of one cost was asked for: a figure of the pairing and its row
 * @fires sw-says {SaysDetail} one sentence for a screen reader
 */
export class CallChoices extends NotebookElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    cellId: { attribute: false },
    partName: { attribute: false },
    refusal: { state: true },
  };

  static override styles = [baseStyles, controlStyles, callStyles, callChoicesStyles];

  declare cellId: string;
  declare partName: string;
  /** Why what was asked last cannot be; '' when it could. */
  declare private refusal: string;

  constructor() {
    super();
    this.cellId = '';
    this.partName = '';
    this.refusal = '';
    new NotebookController(
      this,
      () => this.notebook,
      (change) => this.#concerns(change),
    );
  }

  get #cell(): CallsCell | undefined {
    const cell = this.notebook?.document.cells.find((each) => each.id === this.cellId);
    return cell?.kind === 'calls' ? cell : undefined;
  }

  #concerns(change: NotebookChange): boolean {
    const cell = this.#cell;
    if (cell === undefined) return change.document;
    return (
      change.document ||
      touches(change.nodes, cell.name) ||
      touches(change.nodes, cell.pairing) ||
      (cell.plan !== undefined && touches(change.nodes, cell.plan))
    );
  }

  override willUpdate(changed: PropertyValues): void {
    if (changed.has('partName')) this.refusal = '';
  }

  override render(): unknown {
    const cell = this.#cell;
    if (cell === undefined || this.partName === '') return nothing;
    const { parts, money } = readCalls(this.notebook, cell);
    const part = parts.find((each) => each.part === this.partName);
    if (part === undefined) return nothing;
    const strips = readCostParts(this.notebook, cell, part.calls);
    const longest = strips === null ? 0 : Math.max(...[...strips.values()].map(stripLength), 0);
    return html`<h3>Expected cost, ${money} <span>choosing sets it by hand</span></h3>
      <fieldset class="opts"><legend class="sr">Call for ${part.part}, expected cost in ${money}</legend>
        ${part.calls.map((call) => this.#option(cell, part, call, money, strips?.get(call.call), longest))}
      </fieldset>
      ${longest > 0 ? this.#key() : nothing}
      ${this.refusal === '' ? nothing : html`<p class="refused" role="alert">${faultIcon()}${this.refusal}</p>`}
      ${part.pinned === null ? nothing : this.#pinned(cell, part, part.pinned)}
      ${cell.plan === undefined ? nothing : html`<sw-call-why class="why-call" .notebook=${this.notebook} .planName=${cell.plan} .partName=${part.part}></sw-call-why>`}`;
  }

  #pinned(cell: CallsCell, part: PartCalls, pinned: PartCall): TemplateResult {
    const words = part.byHand
      ? 'Set by hand.'
      : `Set by hand to ${callInWords(pinned)}, which is not allowed now.`;
    return html`<p class="hand-line">${words}
      <button type="button" class="plain" @click=${() => this.#choose(cell, part, null)}>Back to the proposed call</button></p>`;
  }

  #option(
    cell: CallsCell,
    part: PartCalls,
    call: PartCall,
    money: string,
    strip: CostParts | undefined,
    longest: number,
  ): TemplateResult {
    const isChosen = part.chosen?.call === call.call;
    const isPriced = Number.isFinite(call.cost);
    const canChoose = call.allowed && isPriced && call.waitsFor === '' && !call.forbidden;
    const why =
      call.waitsFor !== ''
        ? `Waits for ${call.waitsFor}.`
        : call.allowed
          ? call.forbidden
            ? 'Forbidden by hand: the plan does without it.'
            : ''
          : call.reason || 'This call is not allowed.';
    const refused = forbidRefusal(part, call, call.kind);
    return html`<div class="opt ${canChoose ? '' : 'shut'}" data-call=${call.kind} ?data-on=${isChosen}>
      <label>
        <input type="radio" name="call" .checked=${live(isChosen)} ?disabled=${!canChoose && !isChosen}
          aria-describedby=${why === '' ? nothing : `why-${call.row}`}
          @change=${() => this.#choose(cell, part, call)} />
        ${callGlyph(call.kind)}
        <span class="nm">${callInWords(call)}${isChosen ? this.#margin(part, money) : nothing}${call.forbidden ? html`<em class="byhand">${barredIcon()}forbidden</em>` : nothing}</span>
      </label>
      <button type="button" class="eur" ?disabled=${!isPriced} title="How it is worked out"
        @click=${() => this.#showWorking(cell, call)}>${isPriced ? fineMoney(call.cost) : call.waitsFor === '' ? 'no price' : 'waits'}<span class="sr"> ${money}, how it is worked out</span></button>
      <button type="button" class="plain forbid" aria-pressed=${call.forbidden} aria-disabled=${refused === null ? nothing : 'true'} title=${refused?.sentence ?? nothing}
        @click=${() => this.#forbid(cell, part, call)}>Forbid<span class="sr"> ${callInWords(call)}</span></button>
      ${strip === undefined || longest <= 0 ? nothing : this.#strip(strip, longest)}
      ${why === '' ? nothing : html`<p class="why" id="why-${call.row}">${why}</p>`}
    </div>`;
  }

  #margin(part: PartCalls, money: string): TemplateResult | typeof nothing {
    const margin = marginOf(part);
    if (margin.kind === 'best') return html`<em>best by ${margin.by} ${money}</em>`;
    if (margin.kind === 'level') return html`<em>level</em>`;
    if (margin.kind === 'only') return html`<em>the only one allowed</em>`;
    if (margin.kind === 'limits')
      return html`<em class="sentence">${margin.by} ${money} over its own cheapest, within the limits</em>`;
    return margin.kind === 'over' ? html`<em class="byhand">by hand, ${margin.by}</em>` : nothing;
  }

  #strip(parts: CostParts, longest: number): TemplateResult {
    const piece = (kind: string, amount: number): TemplateResult | typeof nothing =>
      amount <= 0
        ? nothing
        : html`<b class=${kind} ${setProperty('--u', `${((100 * amount) / longest).toFixed(2)}%`)}></b>`;
    return html`<span class="strip" aria-hidden="true">${piece('s1', parts.cash)}${piece('s2', parts.work)}${piece('s3', parts.risk)}${piece('s4', parts.used)}</span>`;
  }

  #key(): TemplateResult {
    return html`<p class="lg" aria-hidden="true"><span><i class="s1"></i>cash</span><span><i class="s2"></i>work, carrying</span>
      <span><i class="s3"></i>risk on the road</span><span><i class="s4"></i>life used up</span></p>`;
  }

  #choose(cell: CallsCell, part: PartCalls, call: PartCall | null): void {
    const edit = editForCall(this.notebook.document, cell, part, call);
    if (edit === null) return;
    this.notebook.apply(edit);
    const words =
      call === null || edit.kind !== 'pin' || edit.after === null
        ? 'back to the proposed call'
        : `${callInWords(call)}, by hand`;
    says(this, `${part.part}: ${words}`);
  }

  /** Rules the call out or allows it again; why that cannot be is said. */
  #forbid(cell: CallsCell, part: PartCalls, call: PartCall): void {
    this.refusal = forbidRefusal(part, call, call.kind)?.sentence ?? '';
    if (this.refusal !== '') return;
    this.notebook.apply(editForForbidding(this.notebook.document, cell, part, call));
    says(this, `${part.part}: ${forbiddingInWords(call)}`);
  }

  #showWorking(cell: CallsCell, call: PartCall): void {
    const detail = { node: `${cell.pairing}.${cell.cost}`, row: call.row, scroll: false };
    this.dispatchEvent(new CustomEvent('sw-go', { detail, bubbles: true, composed: true }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-call-choices': CallChoices;
  }
}
