import { html, LitElement, nothing, type PropertyDeclarations, svg, type TemplateResult } from 'lit';
import { showNumber } from '../../src/formula/show.ts';
import { valueEdit } from '../../src/notebook/edits.ts';
import type { PlanSolution } from '../../src/notebook/graph/node-spec.ts';
import type { LiveNotebook, NotebookChange } from '../../src/notebook/live-notebook.ts';
import { isSolved, type SolvedPlan } from '../../src/plan/plan-result.ts';
import type { FrontierPoint } from '../../src/plan/what-if.ts';
import { baseStyles } from '../shared/base-styles.ts';
import { touches } from '../shared/cell-element.ts';
import { says } from '../shared/cell-events.ts';
import { controlStyles } from '../shared/control-styles.ts';
import { isRedrawn, NotebookController } from '../shared/notebook-controller.ts';
import { tableStyles } from '../shared/sheet-table-styles.ts';
import { frontierStyles } from './frontier.styles.ts';
import {
  type DrawnPoint,
  FRONTIER_SIZE,
  type FrontierDrawing,
  type FrontierSide,
  frontierDrawing,
} from './frontier-drawing.ts';
import { budgetsAround, runFrontier } from './frontier-run.ts';
import { PlanAsking } from './plan-asking.ts';
import { money, percent } from './plan-words.ts';

/** The plan rests this long before its points are worked out unasked, in ms. */
const REST_MS = 900;

/** Points, and the sums that the axis is laid out for. */
interface Shown {
  readonly points: readonly FrontierPoint[];
  readonly budgets: readonly number[];
}

/**
 * Spending against risk: the best plan for a range of sums to spend, drawn and as a table, with today's plan and
 * the budget marked. Worked out when it is asked for, or, where it is told so, once it is in sight and the plan
 * rests; the points before stand there meanwhile, marked. A click or Enter on a point sets the budget to its sum.
 *
 * @prop notebook  @prop planName name of a plan cell  @prop atOnce work it out unasked, and say it in words
 * @fires sw-says {SaysDetail} the budget was set
 */
export class FrontierElement extends LitElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    planName: { attribute: false },
    atOnce: { attribute: false },
    side: { state: true },
  };

  static override styles = [baseStyles, controlStyles, tableStyles, frontierStyles];

  declare notebook: LiveNotebook;
  declare planName: string;
  declare atOnce: boolean;
  declare private side: FrontierSide;

  #asking = new PlanAsking<readonly FrontierPoint[]>(() => this.requestUpdate());
  /** What the points are about: kept when the plan moves on, so that the old picture stays and is marked. */
  #of: { readonly solution: PlanSolution; readonly budgets: readonly number[] } | null = null;
  /** The budget alone is another: every sum's best plan is what it was. */
  #others = '';
  /** What is drawn until newer points are complete. */
  #before: Shown | null = null;
  #inSight = false;
  #resting: ReturnType<typeof setTimeout> | undefined;
  readonly #sight = new IntersectionObserver(([entry]) => {
    this.#inSight = entry?.isIntersecting ?? false;
    if (this.#inSight) this.requestUpdate();
  });

  constructor() {
    super();
    this.planName = '';
    this.atOnce = false;
    this.side = 'risk';
    new NotebookController(
      this,
      () => this.notebook,
      (change) => this.#concerns(change),
    );
  }

  #concerns(change: NotebookChange): boolean {
    return isRedrawn(change) || touches(change.nodes, this.planName);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.#sight.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.#sight.disconnect();
    clearTimeout(this.#resting);
    this.#asking.stop();
  }

  /** Asks unasked, once for each plan: what was stopped by hand stays so until the plan is another. */
  protected override updated(): void {
    clearTimeout(this.#resting);
    const { solution, working } = this.#plan;
    if (!this.atOnce || !this.#inSight || working || solution === null) return;
    if (apartFromBudget(solution) === this.#others) return;
    this.#resting = setTimeout(() => this.#again(), REST_MS);
  }

  get #plan(): { readonly working: boolean; readonly solution: PlanSolution | null } {
    if (!this.notebook || this.planName === '') return { working: false, solution: null };
    return this.notebook.planOf(this.planName);
  }

  #work(solution: PlanSolution): void {
    const { planner } = this.notebook;
    if (planner === null || solution.result === null || !isSolved(solution.result)) return;
    const { instance, result } = solution;
    const budgets = budgetsAround(instance.limits.cash, result.totals.cash);
    const { answer, busy } = this.#asking;
    if (!busy)
      this.#before =
        answer === null || this.#of === null ? null : { points: answer, budgets: this.#of.budgets };
    this.#asking.stop();
    this.#asking = new PlanAsking(() => this.requestUpdate());
    this.#of = { solution, budgets };
    this.#others = apartFromBudget(solution);
    this.#asking.about(solution, 'frontier', (signal, tell) =>
      runFrontier(planner, instance, budgets, signal, tell),
    );
    this.requestUpdate();
  }

  #stop(): void {
    this.#asking.stop();
    this.requestUpdate();
  }

  /** What is drawn: complete points before newer ones that are still coming in. */
  #shown(solution: PlanSolution, result: SolvedPlan): Shown {
    const { answer, busy } = this.#asking;
    if (busy && this.#before !== null) return this.#before;
    const budgets = this.#of?.budgets ?? budgetsAround(solution.instance.limits.cash, result.totals.cash);
    return { points: answer ?? [], budgets };
  }

  override render(): unknown {
    const { solution, working } = this.#plan;
    if (solution?.result == null || !isSolved(solution.result))
      return this.atOnce
        ? html`<p class="hint">${working ? 'The plan is being worked out; it is drawn when it is there.' : 'There is no plan to draw yet: the card of the plan says what it lacks.'}</p>`
        : nothing;
    const { answer, busy, failure } = this.#asking;
    const shown = this.#shown(solution, solution.result);
    const another = this.#of !== null && !working && apartFromBudget(solution) !== this.#others;
    const old = shown.points.length > 0 && (working || another || shown === this.#before);
    return html`${this.#bar(answer, another && !busy && shown.points.length > 0)}
      ${failure === '' ? nothing : html`<p class="hint">It could not be worked out: ${failure}</p>`}
      ${this.#picture(solution, solution.result, shown, old)}`;
  }

  #bar(answer: readonly FrontierPoint[] | null, stale: boolean): TemplateResult {
    const { busy } = this.#asking;
    const count = this.#of?.budgets.length ?? 0;
    const action = busy
      ? html`<button type="button" class="btn slim" @click=${this.#stop}>Stop</button>
          <span class="busy" role="status">working, ${answer?.length ?? 0} of ${count} sums</span>`
      : html`<button type="button" class="btn slim" ?disabled=${this.notebook.planner === null} @click=${this.#again}>${answer === null ? 'Work it out' : 'Work it out again'}</button>`;
    return html`<div class="bar">${action}
      ${stale ? html`<span class="stale">The notebook has changed since; these are figures of before.</span>` : nothing}
      <span class="seg" role="group" aria-label="Drawn upwards">
        ${this.#switch('risk', 'Chance of recovery')}${this.#switch('cost', 'Expected cost')}</span></div>`;
  }

  #switch(side: FrontierSide, words: string): TemplateResult {
    return html`<button type="button" aria-pressed=${this.side === side} @click=${() => {
      this.side = side;
    }}>${words}</button>`;
  }

  #again(): void {
    const { solution } = this.#plan;
    if (solution !== null) this.#work(solution);
  }

  #picture(solution: PlanSolution, result: SolvedPlan, shown: Shown, old: boolean): TemplateResult {
    const { side } = this;
    const { points, budgets } = shown;
    const { cash, trip_risk, expected_cost } = result.totals;
    const today = { cash, up: side === 'risk' ? trip_risk : expected_cost };
    const drawing = frontierDrawing(points, budgets, today, side);
    const unit = solution.instance.money;
    const words = this.#inWords(points, result, unit);
    return html`<div class=${old ? 'old' : ''}>
      ${this.atOnce ? html`<p class="words">${words}</p>` : nothing}
      <div class="drawing"><svg class="plot" data-plot viewBox="0 0 ${FRONTIER_SIZE.width} ${FRONTIER_SIZE.height}" role="group"
        aria-label="Spending against risk. ${words}">
        ${axes(drawing, unit, side)}
        ${solution.instance.limits.cash === null ? nothing : budgetLine(drawing.x(solution.instance.limits.cash))}
        <path class="line" d=${drawing.line} />
        ${drawing.points.map((one) => this.#point(solution, one, unit))}
        <g class="now"><path class="today" d=${diamond(drawing.x(today.cash), drawing.y(today.up))} /></g>
      </svg>
      <p class="hint">Diamond: today's plan. Blue dashes: the budget. Rings: the best plan for each of a dozen sums; dashed where some limit is not met. A click on a ring sets the budget.</p></div>
      <details><summary>The figures</summary>${this.#table(solution, result, points, unit)}</details>
    </div>`;
  }

  #inWords(points: readonly FrontierPoint[], { totals }: SolvedPlan, unit: string): string {
    const today = `Today's plan spends ${money(totals.cash, unit)}, with a chance of a recovery of ${percent(totals.trip_risk)}.`;
    const [least, most] = [points[0], points.at(-1)];
    if (least === undefined || most === undefined) return today;
    return `${today} With ${money(least.budget, unit)} to spend the chance is ${percent(least.trip_risk)}, with ${money(most.budget, unit)} it is ${percent(most.trip_risk)}.`;
  }

  #point(solution: PlanSolution, { x, y, point }: DrawnPoint, unit: string): unknown {
    const words = `Set the budget to ${money(point.budget, unit)}: chance of a recovery ${percent(point.trip_risk)}, expected cost ${money(point.expected_cost, unit)}${point.meets_limits ? '' : ', some limit is not met'}`;
    const set = (): void => this.#setBudget(solution, point.budget, unit);
    return svg`<g class="point ${point.meets_limits ? '' : 'short'}" role="button" tabindex="0" aria-label=${words}
      @click=${set} @keydown=${(event: KeyboardEvent) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        event.stopPropagation();
        set();
      }}><title>${words}</title><circle class="reach" cx=${x} cy=${y} r="14" /><circle class="ring" cx=${x} cy=${y} r="9" /><circle class="dot" cx=${x} cy=${y} r="5" /></g>`;
  }

  #table(
    solution: PlanSolution,
    { totals, meets_limits }: SolvedPlan,
    points: readonly FrontierPoint[],
    unit: string,
  ): TemplateResult {
    return html`<div class="scroll" role="group" aria-label="Spending against risk, as a table" tabindex="0"><table>
      <caption class="sr">Spending against risk</caption>
      <thead><tr><th scope="col" class="num">To spend<span class="u">${unit}</span></th><th scope="col" class="num">Spent<span class="u">${unit}</span></th>
        <th scope="col" class="num">Chance of recovery<span class="u">%</span></th><th scope="col" class="num">Expected cost<span class="u">${unit}</span></th>
        <th scope="col">Limits</th><th scope="col"><span class="sr">Budget</span></th></tr></thead>
      <tbody><tr class="today"><th scope="row">today's plan</th><td class="num">${showNumber(totals.cash, 2)}</td>
          <td class="num">${showNumber(totals.trip_risk * 100, 1)}</td><td class="num">${showNumber(totals.expected_cost, 2)}</td>
          <td>${meets_limits ? 'met' : 'not met'}</td><td></td></tr>${points.map(
            (
              point,
            ) => html`<tr><th scope="row" class="num">${showNumber(point.budget, 0)}</th><td class="num">${showNumber(point.cash, 2)}</td>
          <td class="num">${showNumber(point.trip_risk * 100, 1)}</td><td class="num">${showNumber(point.expected_cost, 2)}</td>
          <td>${point.meets_limits ? (point.status === 'optimal' ? 'met' : 'met, best found') : 'not met'}</td>
          <td><button type="button" class="plain" @click=${() => this.#setBudget(solution, point.budget, unit)}>Set<span class="sr"> the budget to ${money(point.budget, unit)}</span></button></td></tr>`,
          )}</tbody></table></div>`;
  }

  #setBudget({ instance }: PlanSolution, budget: number, unit: string): void {
    const { document } = this.notebook;
    const plan = document.cells.find((cell) => cell.kind === 'plan' && cell.name === this.planName);
    const name = plan?.kind === 'plan' ? plan.reads.cash_limit : '';
    const cell = document.cells.find((one) => one.kind === 'value' && one.name === name);
    if (cell?.kind !== 'value' || cell.content.type !== 'number' || instance.limits.cash === budget) return;
    this.notebook.apply(valueEdit(document, cell.id, { ...cell.content, value: budget }));
    says(this, `${cell.title} is now ${money(budget, unit)}`);
  }
}

/** What a frontier hangs on: everything but the budget. */
function apartFromBudget(solution: PlanSolution): string {
  const known = withoutBudget.get(solution);
  if (known !== undefined) return known;
  const { instance } = solution;
  const text = JSON.stringify({ ...instance, limits: { ...instance.limits, cash: null } });
  withoutBudget.set(solution, text);
  return text;
}

const withoutBudget = new WeakMap<PlanSolution, string>();

function axes(drawing: FrontierDrawing, unit: string, side: FrontierSide): unknown {
  const { left, right, top, bottom } = FRONTIER_SIZE;
  const up = side === 'risk' ? 'Chance of a recovery, %' : `Expected cost of the calls, ${unit}`;
  return svg`<g aria-hidden="true">
    ${drawing.yTicks.map((tick) => svg`<path class="grid" d="M${left} ${tick.at}H${right}" /><text x=${left - 8} y=${tick.at + 4} text-anchor="end">${tick.shown}</text>`)}
    ${drawing.xTicks.map((tick) => svg`<path class="axis" d="M${tick.at} ${bottom}v5" /><text x=${tick.at} y=${bottom + 23} text-anchor="middle">${tick.shown}</text>`)}
    <path class="axis" d="M${left} ${bottom}H${right}" />
    <text class="name" x=${left} y=${top - 24}>${up}</text>
    <text class="name" x=${right} y=${bottom + 50} text-anchor="end">To spend, ${unit}</text></g>`;
}

function budgetLine(x: number): unknown {
  const { top, bottom } = FRONTIER_SIZE;
  return svg`<path class="budget" d="M${x} ${top}V${bottom}" aria-hidden="true" />`;
}

const diamond = (x: number, y: number): string => `M${x} ${y - 8}l8 8-8 8-8-8z`;

declare global {
  interface HTMLElementTagNameMap {
    'sw-frontier': FrontierElement;
  }
}
