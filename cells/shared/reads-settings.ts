import { css, html, nothing, type TemplateResult } from 'lit';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import { CALLS_COLUMNS } from '../../src/notebook/references.ts';
import { settingLine } from './setting-line.ts';

/**
 * Everything that can be read by name: single figures, then the columns of every table, a pairing's parents'
 * included.
 *
 * @example readableNames(document) // ['budget', ..., 'wear.part', 'wear.rate', ...]
 */
export function readableNames(document: NotebookDocument): readonly string[] {
  const single: string[] = [];
  const columns: string[] = [];
  const ofTable = new Map<string, readonly string[]>();
  for (const cell of document.cells)
    if (cell.kind === 'table')
      ofTable.set(
        cell.name,
        cell.columns.map((column) => column.name),
      );
  for (const cell of document.cells) {
    if (cell.kind === 'value' || cell.kind === 'formula') single.push(cell.name);
    else if (cell.kind === 'calls') columns.push(...CALLS_COLUMNS.map((column) => `${cell.name}.${column}`));
    else if (cell.kind === 'table')
      columns.push(...cell.columns.map((column) => `${cell.name}.${column.name}`));
    else if (cell.kind === 'pairing') {
      const own = cell.columns.map((column) => column.name);
      const all = new Set([...own, ...(ofTable.get(cell.left) ?? []), ...(ofTable.get(cell.right) ?? [])]);
      columns.push(...[...all].map((column) => `${cell.name}.${column}`));
    }
  }
  return [...single, ...columns];
}

export interface ReadSetting<R extends string> {
  readonly role: R;
  readonly label: string;
  /** Names of plans are offered rather than those of figures. */
  readonly plan?: boolean;
}

/** The lines in which a card is told what to read, one for each role; an empty one is left out of the card. */
export function readsSettings<R extends string>(
  settings: readonly ReadSetting<R>[],
  reads: Readonly<Partial<Record<R, string>>>,
  document: NotebookDocument,
  keep: (role: R, name: string) => void,
): TemplateResult {
  const figures = readableNames(document);
  const plans = document.cells.flatMap((cell) => (cell.kind === 'plan' ? [cell.name] : []));
  return html`<div class="settings reads">
    ${settings.map(({ role, label, plan }) => {
      const options = plan ? plans : figures;
      const entry = reads[role] ?? null;
      // A name that is no longer there stays in the list, so that it can be seen and mended.
      const known = entry === null || options.includes(entry) ? options : [entry, ...options];
      return settingLine({
        label,
        entry,
        column: { kind: 'choice', options: known },
        keep: (after) => keep(role, after === null ? '' : String(after)),
      });
    })}
  </div>`;
}

/**
 * The fold at a card's foot in which it is told what to read. Its lines are made only while it is open: each
 * offers every name of the notebook.
 */
export function setupFold(
  summary: string,
  open: boolean,
  turned: (open: boolean) => void,
  inside: () => unknown,
): TemplateResult {
  return html`<details class="setup" ?open=${open} @toggle=${(event: Event) => turned((event.target as HTMLDetailsElement).open)}>
    <summary>${summary}</summary>
    ${open ? inside() : nothing}
  </details>`;
}

export const readsStyles = css`
  details.setup {
    border-top: 1px solid var(--rule-2);
    padding: 0 16px;
  }
  details.setup > summary {
    padding: 8px 0;
    font: 600 var(--t-2) / 1.4 var(--face-sign);
    color: var(--ink-2);
    cursor: pointer;
  }
  @media (max-width: 720px) {
    details.setup > summary {
      padding-block: calc((var(--touch) - 1.4 * var(--t-2)) / 2);
    }
  }
  .reads {
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 260px), 1fr));
    gap: 6px 24px;
    padding-bottom: 14px;
  }
  .reads.wide {
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 400px), 1fr));
  }
  .reads .setting {
    grid-template-columns: 116px minmax(0, 1fr);
  }
  @media print {
    details.setup {
      display: none;
    }
  }
`;
