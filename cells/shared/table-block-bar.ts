import { css, html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { baseStyles } from './base-styles.ts';
import { controlStyles } from './control-styles.ts';
import { type Block, blockColumns, blockInWords, blockRows } from './table-block.ts';
import type { BlockAct } from './table-hands.ts';
import type { GridExtent } from './table-keys.ts';
import type { Grid } from './table-model.ts';

/** `sw-block`: what is to be done; `rows` and `columns` mark more, `done` marks nothing any more. */
export interface BlockDetail {
  readonly act: BlockAct | 'rows' | 'columns' | 'done';
}

type Act = readonly [BlockDetail['act'], string];

/**
 * What can be done with the marked block of a table, as plain words under it: by touch, by pointer, and by
 * keyboard for what has no key of its own. Rows and columns are offered when whole ones are marked.
 *
 * @prop grid  @prop block the marked block, null while its first corner is asked for  @prop extent rows and
 *   columns that can be reached  @prop viewed the rows are sorted or sifted: they cannot be moved
 * @fires sw-block {BlockDetail} does not leave the card
 */
export class BlockBar extends LitElement {
  static override properties: PropertyDeclarations = {
    grid: { attribute: false },
    block: { attribute: false },
    extent: { attribute: false },
    viewed: { attribute: false },
  };

  static override styles = [
    baseStyles,
    controlStyles,
    css`
      :host {
        display: block;
        border-top: 1px solid var(--pen-rule);
        background: var(--pen-wash);
      }
      .bar {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 2px 14px;
        padding: 6px 16px 7px;
      }
      .what {
        margin-right: auto;
        font: 600 var(--t-2) / 1.3 var(--face-sign);
        color: var(--pen);
      }
      .set {
        display: inline-flex;
        flex-wrap: wrap;
        gap: 0 12px;
      }
      @media (max-width: 720px) {
        .bar {
          padding-inline: 12px;
        }
      }
    `,
  ];

  declare grid: Grid;
  declare block: Block | null;
  declare extent: GridExtent;
  declare viewed: boolean;

  constructor() {
    super();
    this.block = null;
    this.viewed = false;
  }

  override render(): TemplateResult {
    const { block } = this;
    return html`<div class="bar" role="toolbar" aria-label="Marked block">
      <span class="what" role="status">${block === null ? 'Tap the first corner, then the other.' : `${blockInWords(block)} marked`}</span>
      ${block === null ? nothing : this.#sets(block)}
      <button type="button" class="plain" @click=${() => this.#act('done')}>Done</button>
    </div>`;
  }

  #sets(block: Block): TemplateResult {
    const isEntered = this.grid.columns
      .slice(block.left, block.right + 1)
      .some((column) => column.entered !== null);
    const isTable = [...this.grid.columns, ...this.grid.folded].some((column) => column.entered !== null);
    const wholeRows = blockColumns(block) === this.extent.columns;
    const wholeColumns = blockRows(block) === this.extent.rows;
    const set = (acts: readonly Act[]): TemplateResult =>
      html`<span class="set">${acts.map(
        ([act, words]) =>
          html`<button type="button" class="plain" @click=${() => this.#act(act)}>${words}</button>`,
      )}</span>`;
    return html`${set([['copy', 'Copy'], ...(isEntered ? this.#onFields(block) : [])])}
      ${set([
        ...(wholeRows ? [] : ([['rows', 'Whole rows']] as const)),
        ...(wholeColumns ? [] : ([['columns', 'Whole columns']] as const)),
      ])}
      ${wholeRows && isTable ? set(this.#onRows(block)) : nothing}
      ${wholeColumns && !wholeRows ? set([['remove-columns', blockColumns(block) === 1 ? 'Remove the column' : 'Remove the columns']]) : nothing}`;
  }

  #onFields(block: Block): readonly Act[] {
    const canDown = blockRows(block) > 1 || block.top > 0;
    const canAcross = blockColumns(block) > 1 || block.left > 0;
    return [
      ['cut', 'Cut'],
      ['paste', 'Paste'],
      ['clear', 'Empty'],
      ...(canDown ? ([['fill-down', 'Fill down']] as const) : []),
      ...(canAcross ? ([['fill-across', 'Fill across']] as const) : []),
    ];
  }

  #onRows(block: Block): readonly Act[] {
    const many = blockRows(block) > 1;
    return [
      ['rows-above', many ? `Add ${blockRows(block)} above` : 'Add one above'],
      ['rows-below', many ? `Add ${blockRows(block)} below` : 'Add one below'],
      ...(this.viewed
        ? []
        : ([
            ['rows-up', 'Move up'],
            ['rows-down', 'Move down'],
          ] as const)),
      ['remove-rows', many ? 'Remove the rows' : 'Remove the row'],
    ];
  }

  #act(act: BlockDetail['act']): void {
    this.dispatchEvent(new CustomEvent<BlockDetail>('sw-block', { detail: { act } }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'sw-block-bar': BlockBar;
  }
  interface HTMLElementEventMap {
    'sw-block': CustomEvent<BlockDetail>;
  }
}
