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
  /* What is entered stands on a rule, over that of the row. Both are drawn as a background: a box of its own for
     each would be a layer more at every figure. */
  td.pen-cell {
    --under: var(--rule);
    --rule-end: 4px;
    color: var(--pen);
    border-bottom-color: transparent;
    background-image:
      linear-gradient(var(--pen-rule), var(--pen-rule)), linear-gradient(var(--under), var(--under));
    background-position:
      right var(--rule-end) bottom 0,
      left 0 bottom 0;
    background-size:
      min(64px, calc(100% - 8px)) 1px,
      100% 1px;
    background-repeat: no-repeat;
    background-origin: border-box;
    print-color-adjust: exact;
  }
  tbody td:last-child.pen-cell {
    --rule-end: 12px;
  }
  tbody tr:last-child td.pen-cell {
    background-position: right var(--rule-end) bottom 3px;
    background-size:
      min(64px, calc(100% - 8px)) 1px,
      0 0;
  }
  td.pen-cell:hover {
    background-color: var(--pen-wash);
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
