import { html, nothing, type PropertyDeclarations, type PropertyValues, type TemplateResult } from 'lit';
import { keyed } from 'lit/directives/keyed.js';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { pick } from '../../../cells/shared/cell-events.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { inkRule } from '../../../cells/shared/ink-rule.ts';
import { concernsAll, NotebookController } from '../../../cells/shared/notebook-controller.ts';
import { NotebookElement } from '../../../cells/shared/notebook-element.ts';
import { gauge, gaugeStyles } from '../../../cells/tally/gauge.ts';
import { figuresOf, readTally, type TallyReading } from '../../../cells/tally/tally-reading.ts';
import { showCount } from '../../formula/show.ts';
import type { TallyFigure } from '../../notebook/document.ts';
import { firstTally, type LogEntry } from '../session/effect-log.ts';
import { effectWords } from './effect-words.ts';
import { clock } from './kept-words.ts';
import { tallyStripStyles } from './tally-strip.styles.ts';

/** Most gauges and most wide figures in the strip; the card of the tally shows the rest. */
const MOST_GAUGES = 4;
const MOST_WIDE = 2;
/** What an empty notebook will come to show here. */
const TO_COME = ['Cash', 'Pack, kg', 'Pack, litres', 'Shed hours'];
const TO_COME_WIDE = [
  ['Expected total', 'needs legs, prices, wear'],
  ['Chance of needing recovery', 'needs legs and wear'],
] as const;

/**
 * The tally, which never scrolls away: figures with their limits, figures of the whole trip, and what the
 * last edit did.
 *
 * @prop notebook  @prop last newest line of the road log, or null
 * @fires sw-pick {PickDetail} a figure was clicked
 * @fires sw-action {HeadAction} 'undo'
 */
export class TallyStrip extends NotebookElement {
  static override properties: PropertyDeclarations = {
    notebook: { attribute: false },
    last: { attribute: false },
  };
  static override styles = [baseStyles, controlStyles, gaugeStyles, tallyStripStyles];

  declare last: LogEntry | null;
  #shown: ReadonlyMap<string, string> = new Map();

  constructor() {
    super();
    this.last = null;
    new NotebookController(
      this,
      () => this.notebook,
      concernsAll,
      () => figuresOf(firstTally(this.notebook?.document)),
    );
  }

  override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    this.style.setProperty('--columns', this.#columns());
    this.#markChanged();
  }

  /** Rule the figures that read otherwise than at the last drawing. */
  #markChanged(): void {
    const shown = new Map<string, string>();
    for (const figure of this.renderRoot.querySelectorAll<HTMLElement>('.fig[data-node]')) {
      const node = figure.dataset.node ?? '';
      const text = figure.textContent ?? '';
      shown.set(node, text);
      if (this.#shown.has(node) && this.#shown.get(node) !== text) inkRule(figure);
    }
    this.#shown = shown;
  }

  /** Gauges share the strip evenly, figures of the trip have a little more, the last edit most. */
  #columns(): string {
    const { gauges, wide } = this.#figures();
    const empty = this.notebook?.document.cells.length === 0;
    const narrow = empty ? TO_COME.length : gauges.length;
    const broad = empty ? TO_COME_WIDE.length : wide.length;
    const columns = [
      ...(narrow > 0 ? [`repeat(${narrow}, minmax(0, 1fr))`] : []),
      ...(broad > 0 ? [`repeat(${broad}, minmax(0, 1.36fr))`] : []),
      'minmax(0, 1.6fr)',
    ];
    return columns.join(' ');
  }

  #figures(): { readonly gauges: readonly TallyFigure[]; readonly wide: readonly TallyFigure[] } {
    const figures = (this.notebook && firstTally(this.notebook.document)?.figures) ?? [];
    return {
      gauges: figures.filter((one) => one.limit !== undefined).slice(0, MOST_GAUGES),
      wide: figures.filter((one) => one.limit === undefined).slice(0, MOST_WIDE),
    };
  }

  override render(): unknown {
    if (!this.notebook) return nothing;
    const { gauges, wide } = this.#figures();
    const empty = this.notebook.document.cells.length === 0;
    return html`<div class="tally" role="region" aria-label="Tally">
      ${empty ? this.#toCome() : nothing} ${gauges.map((figure) => this.#gauge(figure))} ${wide.map((figure) => this.#wide(figure))}
      ${this.#edit(!empty && gauges.length + wide.length === 0)}
    </div>`;
  }

  #gauge(figure: TallyFigure): TemplateResult {
    const reading = readTally(this.notebook, figure);
    const label = reading.room ? `${figure.label.replace(/,.*$/, '')}, ${reading.room}` : figure.label;
    return html`<button class="tl g" @click=${() => this.#pick(figure)}>
      ${this.#top(label, figure, reading)}
      ${this.#fig(reading, reading.limit ? html`of ${reading.limit.shown}<span class="unit"> ${reading.unit}</span>` : 'no limit yet')}
      ${gauge(reading)}
    </button>`;
  }

  #wide(figure: TallyFigure): TemplateResult {
    const reading = readTally(this.notebook, figure);
    return html`<button class="tl wide" @click=${() => this.#pick(figure)}>
      ${this.#top(figure.label, figure, reading)}
      ${this.#fig(reading, html`<span class="unit">${reading.unit}</span>`)}
      <span class="note">${this.#note(figure, reading)}</span>
    </button>`;
  }

  #fig(reading: TallyReading, after: unknown): TemplateResult {
    if (reading.value === null) {
      const words = reading.state === 'fault' ? 'has a fault' : reading.state || 'no figure';
      return html`<span class="fig none">–<small>${words}</small></span>`;
    }
    // Another figure is another element: it takes its room anew, and the browser sees nothing moved aside.
    return html`${keyed(
      reading.shown,
      html`<span class="fig ${reading.state}" data-node=${reading.node}><span class="n">${reading.shown}</span><small>${after}</small></span>`,
    )}`;
  }

  /** The label, and at its right how the figure has changed since the last edit. */
  #top(label: string, figure: TallyFigure, reading: TallyReading): TemplateResult {
    const effect = this.last?.effects.find((one) => one.figure.figure === figure.figure);
    // A figure that is not there yet says so itself.
    const isOld = reading.state === 'working' && reading.value !== null;
    const words = isOld ? 'working' : (effect?.words ?? '');
    const same = words === 'no change' || words === 'working';
    return html`<span class="top ${same ? 'same' : ''}">
      <span class=${reading.limit?.level === 'over' ? 'over' : ''}>${label}</span>
      ${words === '' ? nothing : keyed(words, html`<span class="delta ${same ? 'none' : ''}">${words}</span>`)}
    </span>`;
  }

  /** A chance also as `about 1 trip in 6`; any other figure with the few words of its card. */
  #note(figure: TallyFigure, reading: TallyReading): string {
    if (figure.percent && reading.value !== null && reading.value > 0) {
      return reading.value >= 0.6
        ? 'more often than not'
        : `about 1 trip in ${showCount(Math.round(1 / reading.value))}`;
    }
    return (
      this.notebook.document.cells.find((cell) => 'name' in cell && cell.name === figure.figure)?.gist ?? ''
    );
  }

  #edit(alone: boolean): TemplateResult {
    const { last } = this;
    if (!last) {
      const words = alone
        ? 'Add a tally card to keep figures in sight'
        : 'Each edit shows here, with what it did';
      return html`<div class="tl edit ${alone ? 'alone' : ''}"><div class="top"><span>Last edit</span></div><div class="what none">${words}</div></div>`;
    }
    // The first of them alone has room; each gauge says its own.
    const shown = figuresOf(firstTally(this.notebook.document));
    const isWorking = shown.some((figure) => this.notebook.read(figure).state === 'working');
    const effects = effectWords(last.effects, isWorking);
    const lead = last.way === 'undo' ? 'Undone: ' : last.way === 'redo' ? 'Done again: ' : '';
    return html`<div class="tl edit ${alone ? 'alone' : ''}">
      <div class="top"><span>Since last edit, ${clock(last.at)}</span></div>
      <div class="what" title="${last.what}: ${last.change}">${lead}${last.what}${last.change ? `: ${last.change}` : ''}</div>
      <div class="row">
        <span title=${effects}>${effects.split(', ')[0]}</span>
        ${last.way === 'undo' ? this.#button('redo', 'Redo') : this.#button('undo', 'Undo')}
      </div>
    </div>`;
  }

  #button(action: 'undo' | 'redo', word: string): TemplateResult {
    const possible = action === 'undo' ? this.notebook.canUndo : this.notebook.canRedo;
    const act = (): boolean =>
      this.dispatchEvent(new CustomEvent('sw-action', { detail: action, bubbles: true, composed: true }));
    return html`<button class="plain" ?disabled=${!possible} @click=${act}>${word}</button>`;
  }

  #toCome(): TemplateResult {
    return html`${TO_COME.map(
      (label) =>
        html`<div class="tl g"><span class="top"><span>${label}</span></span><span class="fig none">–<small>no limit yet</small></span><span class="gauge"></span></div>`,
    )}${TO_COME_WIDE.map(
      ([label, needs]) =>
        html`<div class="tl wide"><span class="top"><span>${label}</span></span><span class="fig none">–</span><span class="note">${needs}</span></div>`,
    )}`;
  }

  #pick(figure: TallyFigure): void {
    const cell = this.notebook.document.cells.find((one) => 'name' in one && one.name === figure.figure);
    if (cell) pick(this, { node: figure.figure, row: null, cell: cell.id });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-tally-strip': TallyStrip;
  }
}
