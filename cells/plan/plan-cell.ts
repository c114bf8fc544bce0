import { html, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { CallsCell, PlanCell } from '../../src/notebook/document.ts';
import { forbidEdit, pinEdit, replaceCell } from '../../src/notebook/edits.ts';
import type { PlanSolution } from '../../src/notebook/graph/node-spec.ts';
import type { PlanInstance } from '../../src/plan/plan-instance.ts';
import { isSolved, type PlanResult, type SolvedPlan } from '../../src/plan/plan-result.ts';
import type { PinsDifference, Saving } from '../../src/plan/what-if.ts';
import type { CardState } from '../shared/card-state.ts';
import { CellElement } from '../shared/cell-element.ts';
import { faultBox } from '../shared/fault-box.ts';
import { readsStyles, setupFold } from '../shared/reads-settings.ts';
import { settingStyles } from '../shared/setting-line.ts';
import { tableStyles } from '../shared/sheet-table-styles.ts';
import { gaugeStyles } from '../tally/gauge.ts';
import { PlanAsking } from './plan-asking.ts';
import { bagRows, bagsView } from './plan-bags.ts';
import { byHandView } from './plan-by-hand.ts';
import { planCellStyles } from './plan-cell.styles.ts';
import { limitRows, ONE_MORE } from './plan-limits.ts';
import { lateOffers, ordersOf } from './plan-orders.ts';
import { planSettings } from './plan-roles.ts';
import { lateView, limitsView, ordersView, sumsView, verdictView } from './plan-views.ts';
import { verdictOf } from './plan-words.ts';

/** The page rests this long before what is not asked for is worked out, in ms. */
const IDLE_MS = 900;

/**
 * The plan: how far it is proven, what it comes to, its limits and what one more unit of each would save, what
 * is bought where and by when, what was set by hand and costs, why a part has its call, spending against risk.
 * While a newer plan is worked out the one before stays, marked.
 *
 * No slots. Parts: sheet, head, verdict, fault.
 *
 * @fires sw-pick {PickDetail} never by itself
 * @fires sw-says {SaysDetail} (from the frontier) the budget was set
 */
export class PlanCellElement extends CellElement<PlanCell> {
  static override properties: PropertyDeclarations = {
    whyOf: { state: true },
    settingUp: { state: true },
  };
  static override styles = [
    CellElement.styles,
    tableStyles,
    gaugeStyles,
    settingStyles,
    readsStyles,
    planCellStyles,
  ];

  /** Part whose reasons are shown; '' for none. */
  declare private whyOf: string;
  /** Whether it shows what it reads. */
  declare private settingUp: boolean;

  readonly #savings = new PlanAsking<readonly Saving[]>(() => this.requestUpdate());
  readonly #pins = new PlanAsking<PinsDifference>(() => this.requestUpdate());
  /** Plan whose questions were stopped by hand: they are not asked again. */
  #leftAlone: PlanSolution | null = null;
  #later: ReturnType<typeof setTimeout> | undefined;

  constructor() {
    super();
    this.whyOf = '';
    this.settingUp = false;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    clearTimeout(this.#later);
    this.#savings.stop();
    this.#pins.stop();
  }

  /** The questions nobody has to ask for come when the plan rests; a newer plan gives them up. */
  override updated(changed: Map<PropertyKey, unknown>): void {
    super.updated(changed as never);
    const cell = this.cell;
    if (cell === undefined) return;
    const { working, solution } = this.notebook.planOf(cell.name);
    if (working || solution === null || !this.#savings.isAbout(solution)) {
      clearTimeout(this.#later);
      this.#savings.stop();
      this.#pins.stop();
      if (!working && solution !== null && solution !== this.#leftAlone)
        this.#later = setTimeout(() => this.#ask(solution), IDLE_MS);
    }
  }

  #ask(solution: PlanSolution): void {
    const { planner } = this.notebook;
    const { instance, result } = solution;
    if (planner === null || result === null || !isSolved(result) || result.status === 'unverified') return;
    if (instance.pins.length + instance.forbidden.length > 0)
      this.#pins.about(solution, 'pins', (signal) =>
        planner.ask({ kind: 'pins', instance, solved: result }, signal),
      );
    this.#savings.about(solution, 'one more', (signal) =>
      planner.ask({ kind: 'one-more', instance, more: ONE_MORE }, signal),
    );
    this.requestUpdate();
  }

  #stop(solution: PlanSolution): void {
    this.#leftAlone = solution;
    this.#savings.stop();
    this.#pins.stop();
    this.requestUpdate();
  }

  get #calls(): CallsCell | undefined {
    const name = this.cell?.calls;
    const found = this.notebook.document.cells.find((cell) => cell.kind === 'calls' && cell.name === name);
    return found?.kind === 'calls' ? found : undefined;
  }

  /** The date that today is, as the notebook says it; null where it does not. */
  get #today(): string | null {
    const found = this.notebook.document.cells.find((cell) => cell.kind === 'value' && cell.name === 'today');
    return found?.kind === 'value' && found.content.type === 'date' ? found.content.value : null;
  }

  protected override headNote(cell: PlanCell): unknown {
    const { solution, working } = this.notebook.planOf(cell.name);
    if (!working) return nothing;
    const before = solution?.result == null ? '' : 'the plan before is shown meanwhile';
    // A plan that is there at once shows no button: the style lets it appear after a while.
    return html`<span class="in"><span class="before">${before}</span> <button type="button" class="plain stop" @click=${() => this.notebook.planner?.cancel()}>Stop<span class="sr"> working out the plan</span></button></span>`;
  }

  protected override body(cell: PlanCell, _state: CardState): unknown {
    return html`${this.#plan(cell)}${setupFold(
      'What this plan reads',
      this.settingUp,
      (open) => {
        this.settingUp = open;
      },
      () => planSettings(this.notebook, cell),
    )}`;
  }

  #plan(cell: PlanCell): unknown {
    const { solution, working, fault } = this.notebook.planOf(cell.name);
    const follows = this.#calls?.plan === cell.name;
    const connect = follows || this.#calls === undefined ? nothing : this.#notFollowed(this.#calls, cell);
    if (fault !== null) {
      const again = (): void => this.notebook.planAgain(cell.name);
      // Only what the planner was asked can be asked once more; other faults are mended in the notebook.
      const actions = fault.kind === 'domain' ? { again } : {};
      if (fault.kind !== 'waits') return html`${faultBox(fault, actions)}${connect}`;
      return html`<p class="verdict">It waits for ${fault.root ?? 'another figure'}, which has no figure yet.</p>${connect}`;
    }
    if (solution === null)
      return html`<p class="verdict">${working ? 'The first plan is being worked out.' : 'There is nothing to plan yet.'}</p>`;
    const { instance, result } = solution;
    return html`<div class=${working && result !== null ? 'old' : ''}>
      ${verdictView(verdictOf(result, instance))}${this.#told(result)}
      ${result !== null && isSolved(result) && result.status !== 'unverified' ? this.#solved(cell, solution, result) : nothing}
    </div>${connect}`;
  }

  #notFollowed(calls: CallsCell, cell: PlanCell): TemplateResult {
    const follow = (): void =>
      this.notebook.apply(replaceCell(this.notebook.document, calls.id, { ...calls, plan: cell.name }));
    return html`<div class="more"><span>${calls.title} does not follow this plan: each part keeps its own cheapest call.</span>
      <span class="grow"><button type="button" class="btn slim" @click=${follow}>Let it follow the plan</button></span></div>`;
  }

  /** What falls short, pins that are refused, parts without a call: a sentence each. */
  #told(result: PlanResult | null): TemplateResult | typeof nothing {
    if (result === null) return nothing;
    const short = isSolved(result) ? result.shortfalls.map((one) => one.sentence) : [];
    const others = [...result.refused_pins, ...result.undecided].map((one) => one.sentence);
    if (short.length + others.length === 0) return nothing;
    return html`<ul class="told">${short.map((sentence) => html`<li class="bad">${sentence}</li>`)}${others.map((sentence) => html`<li>${sentence}</li>`)}</ul>`;
  }

  #solved(cell: PlanCell, solution: PlanSolution, result: SolvedPlan): TemplateResult {
    const { instance } = solution;
    const { totals } = result;
    const savings = this.#savings.isAbout(solution) ? this.#savings.answer : null;
    const asking = this.#savings.busy
      ? html`<span role="status">working out what one more would save</span> <button type="button" class="plain" @click=${() => this.#stop(solution)}>Stop</button>`
      : 'and what one more of each would save';
    return html`${sumsView(totals, instance.money)}
      ${limitsView(
        // Those of the bags stand with the bags.
        limitRows(instance, totals, savings).filter((row) => row.bag === null),
        asking,
      )}
      ${ordersView(ordersOf(instance, result), totals, instance.money, this.#today)}
      ${lateView(lateOffers(instance, result))}${bagsView(bagRows(instance, result))}
      ${this.#byHand(solution, result)}
      ${this.#why(cell, instance, result)}
      ${this.#frontier(cell)}`;
  }

  /** Spending against risk, unless a picture of its own draws it. */
  #frontier(cell: PlanCell): TemplateResult {
    const picture = this.notebook.document.cells.find(
      (one) => one.kind === 'picture' && one.shape === 'spending' && one.reads.plan === cell.name,
    );
    return html`<section class="part" aria-labelledby="frontier"><h3 id="frontier">Spending against risk${picture === undefined ? nothing : html`<span class="beside">on a card of its own: ${picture.title}</span>`}</h3>
      ${picture === undefined ? html`<sw-frontier .notebook=${this.notebook} .planName=${cell.name}></sw-frontier>` : nothing}</section>`;
  }

  /** What the calls set and forbidden by hand cost against the plan without them. */
  #byHand(solution: PlanSolution, { refused_pins }: SolvedPlan): TemplateResult | typeof nothing {
    const { instance } = solution;
    const refused = new Set(refused_pins.map((pin) => pin.part));
    const pins = instance.pins.filter((pin) => !refused.has(pin.part));
    const calls = this.#calls;
    if (pins.length + instance.forbidden.length === 0 || calls === undefined) return nothing;
    const { document } = this.notebook;
    return byHandView({
      pins,
      forbidden: instance.forbidden,
      difference: this.#pins.isAbout(solution) ? this.#pins.answer : null,
      stopped: this.#leftAlone === solution,
      money: instance.money,
      free: ({ part }) => this.notebook.apply(pinEdit(document, calls.id, part, null)),
      allow: ({ part, call }) => this.notebook.apply(forbidEdit(document, calls.id, part, call, false)),
    });
  }

  #why(cell: PlanCell, instance: PlanInstance, { plan }: SolvedPlan): TemplateResult {
    const parts = plan.chosen.map((chosen) => chosen.part);
    const part = parts.includes(this.whyOf) ? this.whyOf : '';
    const call = plan.chosen.find((chosen) => chosen.part === part)?.call;
    return html`<section class="part" aria-labelledby="why"><h3 id="why">Why</h3>
      <div class="ask"><label for="part">Part</label><span class="pick"><select id="part" @change=${(
        event: Event,
      ) => {
        this.whyOf = (event.target as HTMLSelectElement).value;
      }}><option value="" ?selected=${part === ''}>choose one</option>${parts.map(
        (name) => html`<option ?selected=${name === part}>${name}</option>`,
      )}</select></span>${call === undefined ? nothing : html`<b>${call.charAt(0).toUpperCase()}${call.slice(1)}</b>`}
        ${instance.parts.find((one) => one.name === part)?.critical ? html`<span>safety-critical</span>` : nothing}</div>
      ${part === '' ? nothing : html`<div class="why"><sw-call-why .notebook=${this.notebook} .planName=${cell.name} .partName=${part}></sw-call-why></div>`}
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-plan-cell': PlanCellElement;
  }
}
