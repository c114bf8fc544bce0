import { css } from 'lit';

/**
 * Tables on a card: heads with a unit line (`.u`), `.num` figures, `.worked` columns, `.pen-cell` entered
 * figures on their ruled line, and the states of one cell: `.fresh`, `.waits`, `.bad`, `.gap`.
 */
export const plainTableStyles = css`
  /* positioned, so that words for screen readers alone are clipped with the rest */
  .scroll {
    position: relative;
    overflow-x: auto;
    display: grid;
    grid-template-columns: minmax(min-content, 1fr);
    container-type: scroll-state;
  }
  .scroll > * {
    grid-area: 1 / 1;
  }
  /* A perforated edge where a table goes on to the right, gone once it is scrolled to its end. */
  .scroll::after {
    content: '';
    grid-area: 1 / 1;
    justify-self: end;
    position: sticky;
    right: 0;
    z-index: 5;
    width: 9px;
    border-left: 1px solid var(--rule-3);
    background: radial-gradient(circle at 4px 5px, var(--rule-3) 1.6px, transparent 2px) 0 0 / 8px 10px
      var(--sheet-2);
    pointer-events: none;
    visibility: hidden;
  }
  @container scroll-state(scrollable: right) {
    .scroll::after {
      visibility: visible;
    }
  }
  table {
    border-collapse: collapse;
    width: 100%;
  }
  th,
  td {
    padding: 0 8px;
    height: var(--row);
    text-align: left;
    vertical-align: middle;
    font-weight: 400;
  }
  th:first-child,
  td:first-child {
    padding-left: 16px;
  }
  th:last-child,
  td:last-child {
    padding-right: 16px;
  }
  th.num,
  td.num {
    text-align: right;
  }
  thead th {
    height: auto;
    padding-top: 7px;
    padding-bottom: 6px;
    vertical-align: bottom;
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
    background: var(--sheet-2);
    border-top: 1px solid var(--rule);
    border-bottom: 1px solid var(--ink-2);
  }
  thead th .u {
    color: var(--ink-3);
    font-weight: 400;
    display: block;
  }
  tbody td,
  tbody th {
    border-bottom: 1px solid var(--rule);
  }
  tbody tr:last-child > * {
    border-bottom: 0;
  }
  tbody th {
    font-weight: 500;
    white-space: nowrap;
  }
  tbody tr:hover > * {
    background-color: var(--sheet-2);
  }
  .worked {
    color: var(--ink);
    background: var(--sheet-2);
  }
  thead th.worked {
    background: var(--sheet-3);
  }
  tfoot td,
  tfoot th {
    border-top: 1px solid var(--ink-2);
    box-shadow:
      inset 0 2px 0 var(--sheet),
      inset 0 3px 0 var(--rule-2);
    font-weight: 600;
    background: var(--sheet-2);
    height: calc(var(--row) + 3px);
  }
  tfoot th {
    font-family: var(--face-sign);
  }
  td.pen-cell {
    color: var(--pen);
    position: relative;
  }
  td.pen-cell::after {
    content: '';
    position: absolute;
    left: auto;
    right: 4px;
    width: min(64px, calc(100% - 8px));
    bottom: -1px;
    border-bottom: 1px solid var(--pen-rule);
    z-index: 1;
    pointer-events: none;
  }
  tbody td:last-child.pen-cell::after {
    right: 12px;
  }
  tbody tr:last-child td.pen-cell::after {
    bottom: 3px;
  }
  td.pen-cell:hover {
    background: var(--pen-wash);
  }
  td.fresh {
    box-shadow: inset 0 -2px 0 var(--ink);
  }
  td.waits {
    color: var(--ink-3);
    background: repeating-linear-gradient(115deg, var(--sheet-3) 0 3px, var(--sheet) 3px 7px);
  }
  td.bad {
    color: var(--fault);
    background: var(--fault-wash);
    box-shadow: inset 0 0 0 1px var(--fault);
    font-weight: 500;
  }
  .gap {
    color: var(--ink-3);
  }
  @media (max-width: 720px) {
    th:first-child,
    td:first-child {
      padding-left: 12px;
    }
    th:last-child,
    td:last-child {
      padding-right: 12px;
    }
  }
  /* On paper a table is no grid, which would not be parted between pages. */
  @media print {
    .scroll {
      display: block;
      container-type: normal;
    }
    .scroll::after {
      display: none;
    }
  }
`;

/** With a stronger rule every fifth row, by its place: too dear where rows come and go at every scroll. */
const fifthRule = css`tbody tr:nth-child(5n) > * { border-bottom-color: var(--rule-2); }`;

export const tableStyles = [fifthRule, plainTableStyles];
