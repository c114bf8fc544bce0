import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { baseStyles } from '../../../cells/shared/base-styles.ts';
import { controlStyles } from '../../../cells/shared/control-styles.ts';
import { clock } from '../head/kept-words.ts';
import type { LogEntry } from '../session/effect-log.ts';
import { panelStyles } from './panel-styles.ts';

/** Lines shown until asked for more. */
const FIRST_LINES = 8;

/**
 * The road log: each edit of this visit, and what it did to the main figure of the tally.
 *
 * @prop entries newest first  @prop main name of the figure whose change stands at the right, or ''
 */
export class RoadLog extends LitElement {
  static override properties: PropertyDeclarations = {
    entries: { attribute: false },
    main: {},
    label: {},
    all: { state: true },
  };

  static override styles = [
    baseStyles,
    controlStyles,
    panelStyles,
    css`
      .log li {
        display: grid;
        grid-template-columns: 44px minmax(0, 1fr) auto;
        gap: 10px;
        padding: 7px 16px;
        border-top: 1px solid var(--rule);
        align-items: baseline;
      }
      time {
        color: var(--ink-3);
        font-size: var(--t-2);
      }
      .what {
        overflow-wrap: anywhere;
      }
      .what small {
        display: block;
        color: var(--ink-2);
        font-size: var(--t-2);
      }
      .d {
        font: 600 var(--t-3) / 1.2 var(--face-sign);
        white-space: nowrap;
      }
      .d.none {
        font-weight: 500;
        color: var(--ink-3);
      }
      .empty {
        padding: 9px 16px 13px;
        border-top: 1px solid var(--rule);
        color: var(--ink-2);
      }
      .more {
        padding: 4px 14px 10px;
      }
    `,
  ];

  declare entries: readonly LogEntry[];
  declare main: string;
  declare label: string;
  declare private all: boolean;

  constructor() {
    super();
    this.entries = [];
    this.main = '';
    this.label = '';
    this.all = false;
  }

  override render(): unknown {
    const shown = this.all ? this.entries : this.entries.slice(0, FIRST_LINES);
    const about = this.label
      ? `each edit, and what it did to ${this.label.toLowerCase()}`
      : 'each edit of this visit';
    return html`<div class="slip">
      <header><div><h2 class="small">Road log</h2><div class="where">${about}</div></div></header>
      ${shown.length === 0 ? html`<p class="empty">No edit yet. Change any figure in blue.</p>` : html`<ol class="log">${shown.map((entry) => this.#line(entry))}</ol>`}
      ${
        shown.length < this.entries.length
          ? html`<div class="more"><button class="plain" @click=${() => {
              this.all = true;
            }}>Show all ${this.entries.length}</button></div>`
          : nothing
      }
    </div>`;
  }

  #line(entry: LogEntry): TemplateResult {
    const effect = entry.effects.find((one) => one.figure.figure === this.main);
    const lead = entry.way === 'undo' ? 'undone, ' : entry.way === 'redo' ? 'done again, ' : '';
    return html`<li>
      <time datetime=${entry.at.toISOString()}>${clock(entry.at)}</time>
      <span class="what">${entry.what}<small>${lead}${entry.change}</small></span>
      <span class="d ${!effect || effect.words === 'no change' ? 'none' : ''}">${effect?.words ?? ''}</span>
    </li>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-road-log': RoadLog;
  }
}
