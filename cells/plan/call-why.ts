import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { PlanCell } from '../../src/notebook/document.ts';
import type { PlanSolution } from '../../src/notebook/graph/node-spec.ts';
import type { LiveNotebook, NotebookChange } from '../../src/notebook/live-notebook.ts';
import { type CallTurn, type CallWhy, explainCall } from '../../src/notebook/trial/explain-call.ts';
import { figuresNow } from '../../src/notebook/trial/figures-now.ts';
import { isSolved } from '../../src/plan/plan-result.ts';
import { callGlyph } from '../calls/call-glyph.ts';
import { type CallName, callInWords, callKindOf } from '../calls/call-kind.ts';
import { callStyles } from '../calls/call-styles.ts';
import { baseStyles } from '../shared/base-styles.ts';
import { touches } from '../shared/cell-element.ts';
import { controlStyles } from '../shared/control-styles.ts';
import { NotebookController } from '../shared/notebook-controller.ts';
import { setProperty } from '../shared/set-property.ts';
import { callWhyStyles } from './call-why.styles.ts';
import { PlanAsking } from './plan-asking.ts';
import { figureWords, turnScale } from './turn-scale.ts';

/** A part is looked at this long before its reasons are asked for, in ms: arrow keys pass over many. */
const ASK_AFTER_MS = 250;

/** Room that is kept before the first answer, in rem: what most parts' reasons take. */
const USUAL_REM = 17;

/**
 * Why the plan has its call for a part: the runner-up in a sentence, then what would change the call, one line
 * a figure: dot is now, post is the break-even, hatched is where another call has it. Both figures are printed.
 *
 * @prop notebook  @prop planName name of a plan cell  @prop partName
 * No events, slots or parts.
 */
export class CallWhyElement extends LitElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    planName: { attribute: false },
    partName: { attribute: false },
  };

  static override styles = [baseStyles, controlStyles, callStyles, callWhyStyles];

  declare notebook: LiveNotebook;
  declare planName: string;
  declare partName: string;

  readonly #asking = new PlanAsking<CallWhy>(() => this.requestUpdate());
  /** What was stopped by hand is not asked again by itself. */
  #stopped: { readonly solution: PlanSolution; readonly part: string } | null = null;
  #later: ReturnType<typeof setTimeout> | undefined;
  #busy = false;
  /** Height of the longest answer so far, px: it is kept for those that come, so that nothing below moves. */
  #roomPx = 0;

  constructor() {
    super();
    this.planName = '';
    this.partName = '';
    new NotebookController(
      this,
      () => this.notebook,
      (change) => this.#concerns(change),
    );
  }

  #concerns(change: NotebookChange): boolean {
    return change.document || touches(change.nodes, this.planName);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#later);
    this.#asking.stop();
  }

  override updated(): void {
    clearTimeout(this.#later);
    this.#keepRoom();
    const { working, solution } = this.#plan();
    if (working || solution === null || this.#isStopped(solution)) return;
    this.#later = setTimeout(() => this.#ask(solution), ASK_AFTER_MS);
  }

  #keepRoom(): void {
    const { working, solution } = this.#plan();
    const isSaid = solution?.result != null && isSolved(solution.result);
    if (!isSaid && !working) {
      this.style.minHeight = '';
      return;
    }
    if (!this.#busy) this.#roomPx = Math.max(this.#roomPx, this.offsetHeight);
    this.style.minHeight = `max(${USUAL_REM}rem, ${this.#roomPx}px)`;
  }

  #plan(): { readonly working: boolean; readonly solution: PlanSolution | null } {
    if (!this.notebook || this.planName === '') return { working: false, solution: null };
    return this.notebook.planOf(this.planName);
  }

  #isStopped(solution: PlanSolution): boolean {
    return this.#stopped?.solution === solution && this.#stopped.part === this.partName;
  }

  #turnOff(solution: PlanSolution): void {
    this.#stopped = { solution, part: this.partName };
    this.#asking.stop();
    this.requestUpdate();
  }

  #goOn(): void {
    this.#stopped = null;
    this.requestUpdate();
  }

  #ask(solution: PlanSolution): void {
    const { planner, document } = this.notebook;
    const plan = document.cells.find((cell) => cell.kind === 'plan' && cell.name === this.planName);
    const { result, instance } = solution;
    if (planner === null || plan?.kind !== 'plan' || result === null || !isSolved(result)) return;
    const part = this.partName;
    const now = figuresNow(this.notebook, plan as PlanCell, part);
    this.#asking.about(solution, part, (signal, tell) =>
      explainCall({ document, plan, instance, solved: result, part, now }, planner, signal, tell),
    );
    this.requestUpdate();
  }

  override render(): unknown {
    const { working, solution } = this.#plan();
    if (solution?.result == null || !isSolved(solution.result)) {
      // The plan is made anew, or there is none.
      this.#busy = working;
      return nothing;
    }
    const { answer, failure } = this.#asking;
    const isNow = !working && this.#asking.isAbout(solution);
    const isOwn = answer?.why.part === this.partName;
    const stopped = this.#isStopped(solution);
    const busy = stopped ? false : working || !isNow || this.#asking.busy || (isOwn && !answer.done);
    this.#busy = busy && failure === '';
    return html`<div class="headline"><h3>What would change this call</h3>
        ${busy && failure === '' ? html`<span class="busy" role="status">working</span>` : nothing}
        ${this.#asking.busy ? html`<button type="button" class="plain" @click=${() => this.#turnOff(solution)}>Stop</button>` : nothing}
        ${stopped ? html`<span class="busy" role="status">stopped</span><button type="button" class="plain" @click=${this.#goOn}>Go on</button>` : nothing}
      </div>
      ${failure !== '' ? html`<p class="says">It could not be worked out: ${failure} Pick the part again to try once more.</p>` : nothing}
      ${isOwn && answer ? html`<div class=${isNow ? '' : 'old'}>${this.#answer(solution, answer)}</div>` : nothing}`;
  }

  #answer(solution: PlanSolution, { why, turns, asked, done }: CallWhy): TemplateResult {
    const named = (call: string): CallName => {
      const kind = solution.instance.calls.find((one) => one.part === why.part && one.name === call)?.kind;
      const spares = Number(/\b(\d+)\b/.exec(call)?.[1] ?? 1);
      return { call, kind: callKindOf(call, kind ?? null), spares };
    };
    return html`<p class="says">In the plan as a whole: ${why.sentence}</p>
      ${turns.length === 0 ? nothing : html`<ul class="turns">${turns.map((turn) => this.#turn(turn, named))}</ul>`}
      ${done ? this.#there(turns, asked, named) : nothing}`;
  }

  #turn(turn: CallTurn, named: (call: string) => CallName): TemplateResult {
    const scale = turnScale(turn);
    const at = (place: number): string => `${place.toFixed(2)}%`;
    const label = `${figureWords(turn.figure)}: now ${scale.nowShown}, turns ${scale.words}`;
    return html`<li data-call=${turn.other === null ? nothing : named(turn.other).kind} class=${turn.other === null ? 'nomatter' : ''}>
      <span class="w">${figureWords(turn.figure)}<small>${scale.words}</small></span>
      <span class="scale" role="img" aria-label=${label}>
        <i class="zone" ${setProperty('--from', at(scale.zoneFrom))} ${setProperty('--to', at(100 - scale.zoneTo))}></i>
        <i class="pst" ${setProperty('--at', at(scale.postAt))}></i>
        <i class="dot" ${setProperty('--at', at(scale.nowAt))}></i>
        <span class="lb" ${setProperty('--at', at(scale.nowLabelAt))}>${scale.nowShown}</span>
        <span class="lb be" ${setProperty('--at', at(scale.postLabelAt))}>${scale.postShown}</span>
      </span>
    </li>`;
  }

  #there(turns: readonly CallTurn[], asked: CallWhy['asked'], named: (call: string) => CallName): unknown {
    const others = [...new Set(turns.flatMap((turn) => turn.other ?? []))].map(named);
    const still = asked.filter((figure) => turns.every((turn) => turn.figure !== figure));
    const names = still.map((figure) => figureWords(figure).toLowerCase());
    const neverWords = names.length === 0 ? '' : `${sentenceOf(names)} not change it, as far as was looked.`;
    if (others.length === 0) return html`<p class="there">${neverWords}</p>`;
    return html`<p class="there">Hatched: there the plan has
      ${others.map(
        (other, at) =>
          html`${at > 0 ? ' or ' : ''}<span data-call=${other.kind}>${callGlyph(other.kind)} <b>${callInWords(other)}</b></span>`,
      )}. ${neverWords}</p>`;
  }
}

/** `Price of one and wear rate do`, `Wear rate does`. */
function sentenceOf(names: readonly string[]): string {
  const text = names.join(' and ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)} ${names.length === 1 && !text.includes(' and ') ? 'does' : 'do'}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-call-why': CallWhyElement;
  }
}
