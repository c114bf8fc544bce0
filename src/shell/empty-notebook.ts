import { css, html, LitElement, type TemplateResult } from 'lit';
import { baseStyles } from '../../cells/shared/base-styles.ts';
import { controlStyles } from '../../cells/shared/control-styles.ts';
import { sheetStyles } from '../../cells/shared/sheet-styles.ts';
import { roadStyles } from './road/road-view.styles.ts';
import { waymark, waymarkStyles } from './road/waymark.ts';

/** The ways into an empty notebook. */
export type Beginning = 'values' | 'legs' | 'prices' | 'wear' | 'open' | 'demo' | 'own-trip';

const WAYS: readonly {
  readonly way: Beginning;
  readonly name: string;
  readonly gist: string;
  readonly act: string;
}[] = [
  {
    way: 'values',
    name: 'Trip values',
    gist: 'Cash limit, pack weight and volume, shed hours, days to cut-off, what a lost day costs you.',
    act: 'Fill in',
  },
  {
    way: 'legs',
    name: 'Legs',
    gist: 'From, to, km, surface, how far help is, what recovery costs.',
    act: 'Add legs',
  },
  {
    way: 'prices',
    name: 'Prices',
    gist: 'One row an offer: part, supplier, price, days until it arrives.',
    act: 'Add prices',
  },
  {
    way: 'wear',
    name: 'Wear',
    gist: 'For each part: today’s reading, the maker’s limit, how fast it goes.',
    act: 'Take readings',
  },
];

/**
 * An empty notebook: a question, four ways in, the dashed road ahead.
 *
 * @fires sw-begin {Beginning}
 */
export class EmptyNotebook extends LitElement {
  static override styles = [
    baseStyles,
    controlStyles,
    sheetStyles,
    waymarkStyles,
    roadStyles,
    css`
      .stop > .sheet {
        margin: 18px 0 8px;
      }
      .post {
        cursor: default;
        top: calc(var(--y) - 14px);
      }
      .begin {
        padding: 4px 24px 24px;
      }
      .begin h2 {
        font: 600 var(--t-7b) / 1.2 var(--face-sign);
        margin-top: 14px;
        white-space: normal;
      }
      .begin > p {
        font-size: var(--t-4a);
        line-height: var(--lh-prose);
        color: var(--ink-2);
        max-width: 62ch;
        margin-top: 6px;
      }
      ul.first {
        margin-top: 18px;
        border-top: 1px solid var(--ink-2);
      }
      .first li {
        display: grid;
        grid-template-columns: 178px minmax(0, 1fr) auto;
        gap: 18px;
        align-items: center;
        padding: 11px 0;
        border-bottom: 1px solid var(--rule);
      }
      .first b {
        font: 600 var(--t-4b) / 1.2 var(--face-sign);
      }
      .first .btn {
        min-width: 128px;
      }
      .first p {
        color: var(--ink-2);
      }
      .or {
        display: flex;
        flex-wrap: wrap;
        gap: 4px 18px;
        align-items: baseline;
        margin-top: 16px;
        color: var(--ink-2);
      }
      .or .plain {
        font-size: var(--t-3);
      }
      .ghost .rail {
        background:
          repeating-linear-gradient(180deg, var(--rule-2) 0 10px, var(--desk) 10px 18px) 30px 0 / 12px 100% no-repeat,
          var(--desk);
      }
      .ahead {
        padding: 22px 0 60px;
        color: var(--ink-2);
        font: 500 var(--t-3) / 1.4 var(--face-sign);
      }
      @media (max-width: 720px) {
        .first li {
          grid-template-columns: minmax(0, 1fr) auto;
          gap: 4px 12px;
        }
        .first p {
          grid-column: 1 / -1;
          grid-row: 2;
        }
        .first .btn {
          grid-column: 2;
          grid-row: 1;
        }
        .begin {
          padding: 2px 14px 18px;
        }
        .begin h2 {
          font-size: var(--t-6b);
        }
        .ghost .rail {
          background:
            repeating-linear-gradient(180deg, var(--rule-2) 0 10px, var(--desk) 10px 18px) 9px 0 / 10px 100% no-repeat,
            var(--desk);
        }
      }
    `,
  ];

  override render(): TemplateResult {
    return html`<div class="road">
      <section class="stop first" aria-labelledby="question">
        <div class="rail"><span class="post">${waymark('empty', false)}</span></div>
        <article class="sheet card">
          <div class="begin">
            <h2 id="question">Where are you going, and on what?</h2>
            <p>Put down what you know, in any order. Figures appear as soon as there is enough to work them out, and change as you change what you wrote. Nothing leaves this device.</p>
            <ul class="first">
              ${WAYS.map(
                ({ way, name, gist, act }, at) =>
                  html`<li><b>${name}</b><p>${gist}</p><button class="btn ${at === 0 ? 'solid' : ''}" @click=${() => this.#begin(way)}>${act}</button></li>`,
              )}
            </ul>
            <div class="or">
              <button class="plain" @click=${() => this.#begin('own-trip')}>Start your own trip, step by step</button>
              <button class="plain" @click=${() => this.#begin('open')}>Open a notebook file</button>
              <button class="plain" @click=${() => this.#begin('demo')}>Look round the worked example</button>
            </div>
          </div>
        </article>
      </section>
      <section class="stop ghost" aria-hidden="true">
        <div class="rail"></div>
        <div class="ahead">The road goes on from here: one waymark for each card you add.</div>
      </section>
    </div>`;
  }

  #begin(way: Beginning): void {
    this.dispatchEvent(
      new CustomEvent<Beginning>('sw-begin', { detail: way, bubbles: true, composed: true }),
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-empty-notebook': EmptyNotebook;
  }
  interface HTMLElementEventMap {
    'sw-begin': CustomEvent<Beginning>;
  }
}
