import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { faultBox } from '../../../cells/shared/fault-box.ts';
import { NotebookController } from '../../../cells/shared/notebook-controller.ts';
import { NotebookElement } from '../../../cells/shared/notebook-element.ts';
import { sheetStyles } from '../../../cells/shared/sheet-styles.ts';
import { typeset } from '../../../cells/shared/typeset.ts';
import { typesetStyles } from '../../../cells/shared/typeset-styles.ts';
import { showCount } from '../../formula/show.ts';
import type { Explanation } from '../../notebook/live-notebook.ts';
import { columnFigures } from './column-figures.ts';
import { panelStyles } from './panel-styles.ts';

/** A figure, by its name and row; row null is a single figure, a whole column, or some rows of one. */
export interface FigureAt {
  readonly node: string;
  readonly row: number | null;
  /** The rows of a column that were read, where they are not all. */
  readonly rows?: readonly number[] | null;
}

/** `sw-go`: the figure that the panel should show, and whether the road should go to its card. */
export interface GoDetail extends FigureAt {
  readonly scroll: boolean;
}

type Term = Explanation['terms'][number];

/**
 * Where one figure comes from, one level deep: the figure, its formula set in type, the same with this row's
 * figures in place, and each name it reads with its figure, to go on from.
 *
 * @prop notebook  @prop at the figure
 * @fires sw-go {GoDetail} a name was clicked
 */
export class FigureSlip extends NotebookElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    at: { attribute: false },
    all: { state: true },
  };
  static override styles = [baseStyles, controlStyles, sheetStyles, typesetStyles, panelStyles];

  declare at: FigureAt;
  declare private all: boolean;

  constructor() {
    super();
    this.all = false;
    new NotebookController(
      this,
      () => this.notebook,
      (change) => change.document || change.nodes.size > 0,
      () => (this.at ? [this.at.node] : []),
    );
  }

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('at')) this.all = false;
  }

  override render(): unknown {
    if (!this.notebook || !this.at) return nothing;
    const { node, row } = this.at;
    const state = this.notebook.read(node);
    if (state.state === 'fault') return faultBox(state.fault);
    if (state.state === 'waiting') return this.#waiting(state.fault.root ?? '', state.fault.message);
    if (row === null && node.includes('.')) return this.#column(node, this.at.rows ?? null);
    const explanation = this.notebook.explain(node, row ?? 0);
    return html`${this.#figure(explanation)} ${explanation.formula === null ? nothing : this.#worked(explanation, explanation.formula)}`;
  }

  #figure(explanation: Explanation): TemplateResult {
    return html`<section>
      <h3>${explanation.kind === 'entered' ? 'Entered by hand' : 'Worked out'}</h3>
      <div class="big-figure ${explanation.kind === 'entered' ? 'by-hand' : ''}">${explanation.figure}</div>
    </section>`;
  }

  #worked(explanation: Explanation, formula: string): TemplateResult {
    const terms = explanation.terms;
    return html`<section>
        <h3>How it is worked out</h3>
        <div class="fx">${typeset(formula)}</div>
        ${terms.length === 0 ? nothing : this.#inPlace(explanation, formula)}
      </section>
      ${terms.length === 0 ? nothing : html`<section><h3>Reads</h3><ul class="list">${distinct(terms).map((term) => this.#term(term))}</ul></section>`}`;
  }

  #inPlace(explanation: Explanation, formula: string): TemplateResult {
    const set = typeset(formula, {
      inPlace: (span) => {
        const term = explanation.terms.find((one) => one.from === span.from && one.to === span.to);
        if (!term || isWholeColumn(term)) return undefined;
        return html`<button class="n" title=${term.text} @click=${() => this.#go(term)}>${bareFigure(term.figure)}</button>`;
      },
    });
    return html`<div class="subst">
      <span class="quiet">=</span><span class="fx">${set}</span> <span class="quiet">=</span><b>${explanation.figure}</b>
    </div>`;
  }

  #term(term: Term): TemplateResult {
    return html`<li><button class="go" @click=${() => this.#go(term)}>${term.text.replaceAll('_', ' ')}</button><span>${term.figure}</span></li>`;
  }

  #column(node: string, rows: readonly number[] | null): TemplateResult {
    const figures = columnFigures(this.notebook, node, rows, this.all ? undefined : 24);
    const explanation = this.notebook.explain(node, 0);
    return html`${
      explanation.formula === null
        ? nothing
        : html`<section><h3>How it is worked out, row by row</h3><div class="fx">${typeset(explanation.formula)}</div></section>`
    }
      <section>
        <h3>Figures <small>${rows === null ? '' : 'those read: '}${showCount(figures.count)} ${figures.count === 1 ? 'row' : 'rows'}${figures.unit ? `, ${figures.unit}` : ''}</small></h3>
        <ul class="list">
          ${figures.shown.map(
            (one) =>
              html`<li><button class="go" @click=${() => this.#send({ node, row: one.row, scroll: false })}>${one.name}</button><span>${one.figure}</span></li>`,
          )}
        </ul>
        ${
          figures.shown.length < figures.count
            ? html`<div class="acts"><button class="plain" @click=${() => {
                this.all = true;
              }}>Show all ${showCount(figures.count)}</button></div>`
            : nothing
        }
      </section>`;
  }

  #waiting(root: string, message: string): TemplateResult {
    return html`<section>
      <h3>Waits</h3>
      <p>${message}</p>
      ${root ? html`<div class="acts"><button class="btn slim" @click=${() => this.#send({ node: root, row: null, scroll: true })}>Go to ${root}</button></div>` : nothing}
    </section>`;
  }

  #go(term: Term): void {
    this.#send({ node: term.node, row: term.row, rows: term.rows, scroll: false });
  }

  #send(detail: GoDetail): void {
    this.dispatchEvent(new CustomEvent<GoDetail>('sw-go', { detail, bubbles: true, composed: true }));
  }
}

function isWholeColumn(term: Term): boolean {
  return term.row === null && term.node.includes('.');
}

/** A figure as it stands in a formula, where the unit would only be in the way. */
function bareFigure(figure: string): string {
  const match = /^([−<>+]?[\d,.'’\u00a0\u202f]+(?:e[+-]?\d+)?)(?: .*)?$/.exec(figure);
  return match?.[1] ?? figure;
}

/** Each figure once, however often the formula reads it. */
function distinct(terms: readonly Term[]): readonly Term[] {
  return terms.filter(
    (term, at) =>
      terms.findIndex(
        (one) => one.node === term.node && one.row === term.row && `${one.rows}` === `${term.rows}`,
      ) === at,
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-figure-slip': FigureSlip;
  }
  interface HTMLElementEventMap {
    'sw-go': CustomEvent<GoDetail>;
  }
}
