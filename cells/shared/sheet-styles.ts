import { css } from 'lit';

/**
 * A card: `.sheet` with its `header` (h2 name, `.gist`, `.link` feeds / fed by, `.state` word at far right),
 * the last line `.more`, the caution strip `.caution`, the fault box `.fault-box`, and pen (`.pen`).
 */
export const sheetStyles = css`
  .sheet {
    background: var(--sheet);
    border: 1px solid var(--rule-2);
    border-top: 3px solid var(--ink-2);
    border-radius: var(--r-2);
    box-shadow: var(--lift);
    min-width: 0;
  }
  /* Out of sight a card keeps its place, at the size it had, and costs no layout. */
  :host {
    contain-intrinsic-size: auto 320px;
  }
  :host([far]) {
    content-visibility: auto;
  }
  :host([selected]) .sheet {
    border-color: var(--ink);
    outline: 2px solid var(--ink);
    outline-offset: -1px;
  }
  .sheet.is-fault {
    border-top-color: var(--fault);
  }
  .sheet > header {
    display: flex;
    align-items: baseline;
    gap: 12px;
    padding: 8px 16px 7px;
    min-height: 40px;
  }
  .sheet h2 {
    font: 600 var(--t-5) / 1.25 var(--face-sign);
    white-space: nowrap;
  }
  .sheet.folded {
    border-top-width: 1px;
    border-top-color: var(--rule-2);
    background: var(--sheet-2);
  }
  .sheet.folded > header {
    min-height: 34px;
    padding: 4px 16px;
  }
  .sheet.folded h2 {
    font-size: var(--t-4);
  }
  .sheet.folded.is-fault {
    border-top: 3px solid var(--fault);
  }
  .fold {
    color: var(--ink-2);
  }
  .gist {
    color: var(--ink-2);
    font-size: var(--t-3);
    min-width: 0;
  }
  .link {
    font: 600 var(--t-2) / 1 var(--face-sign);
    color: var(--ink);
    white-space: nowrap;
    display: inline-flex;
    gap: 5px;
    align-items: center;
  }
  .link svg {
    width: 22px;
    height: 10px;
  }
  .state {
    margin-left: auto;
    display: inline-flex;
    align-items: baseline;
    gap: 12px;
    white-space: nowrap;
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-3);
  }
  .state .bad {
    color: var(--fault);
    font-weight: 600;
  }
  .state .busy {
    color: var(--ink);
    font-weight: 600;
  }
  .state .hand {
    color: var(--pen);
    font-weight: 600;
  }

  .pen {
    color: var(--pen);
    border-bottom: 1px solid var(--pen-rule);
    padding-bottom: 1px;
  }
  .pen-t {
    color: var(--pen);
  }

  .more {
    display: flex;
    align-items: center;
    gap: 14px;
    padding: 6px 16px 8px;
    border-top: 1px solid var(--rule-2);
    color: var(--ink-2);
    font-size: var(--t-2);
    min-height: 38px;
    flex-wrap: wrap;
  }
  .more .grow {
    margin-left: auto;
    display: flex;
    flex-wrap: wrap;
    gap: 14px;
  }

  .caution {
    display: grid;
    grid-template-columns: 20px minmax(0, 1fr);
    background: var(--caution-wash);
    color: var(--ink);
    border-top: 1px solid var(--rule-2);
    font-size: var(--t-3);
    line-height: 1.4;
  }
  .caution::before {
    content: '';
    background: repeating-linear-gradient(
      135deg,
      var(--caution-hatch) 0 7px,
      var(--caution-wash) 7px 14px
    );
    border-right: 1px solid var(--caution-hatch);
  }
  .caution > p,
  .caution > div {
    padding: 8px 16px 9px 14px;
    max-width: 108ch;
  }
  .caution b {
    font-family: var(--face-sign);
    font-weight: 700;
    color: var(--caution);
  }
  .safe {
    display: inline-block;
    width: 13px;
    height: 12px;
    color: var(--caution);
    vertical-align: -1px;
    margin-left: 6px;
  }

  .fault-line {
    display: inline-flex;
    align-items: baseline;
    gap: 7px;
    color: var(--fault);
    font-weight: 500;
  }
  .fault-line svg {
    width: 13px;
    height: 13px;
    flex: none;
    align-self: center;
    fill: currentColor;
  }
  .fault-box {
    display: flex;
    gap: 10px;
    align-items: center;
    flex-wrap: wrap;
    padding: 8px 16px;
    background: var(--fault-wash);
    border-top: 1px solid var(--fault-rule);
    font-size: var(--t-3);
  }
  .fault-box + .fault-box {
    border-top-color: var(--rule);
  }
  .fault-box b {
    color: var(--fault);
    font-weight: 600;
  }
  .fault-box > svg {
    width: 16px;
    height: 16px;
    color: var(--fault);
    fill: currentColor;
    flex: none;
  }
  .fault-box > .says {
    flex: 1 1 240px;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .fault-box .acts {
    margin-left: auto;
    display: flex;
    gap: 8px;
    align-items: center;
  }

  @media (max-width: 720px) {
    .sheet > header {
      flex-wrap: wrap;
      gap: 2px 10px;
      padding: 9px 12px 8px;
    }
    .sheet > header h2 {
      white-space: normal;
    }
    .sheet > header .gist {
      order: 3;
      flex-basis: 100%;
    }
    .sheet > header .link,
    .state .calm {
      display: none;
    }
    .fold {
      min-height: 32px;
    }
    .sheet.folded > header {
      padding: 5px 12px;
    }
    .more,
    .fault-box {
      padding-inline: 12px;
    }
    .fault-box .acts {
      margin-left: 0;
    }
    .caution {
      grid-template-columns: 12px minmax(0, 1fr);
    }
    .caution > p,
    .caution > div {
      padding: 8px 12px 9px 10px;
    }
  }
  @media print {
    .fold {
      display: none;
    }
  }
`;

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
