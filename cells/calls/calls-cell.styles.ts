import { css } from 'lit';

export const callsCellStyles = css`
  :host {
    container-type: inline-size;
  }
  table {
    border-collapse: separate;
    border-spacing: 0;
  }
  /* Room for the widest of the state words, and figures of one width, so that nothing beside them moves. */
  .state {
    font-variant-numeric: tabular-nums;
  }
  .state > :last-child {
    min-width: 42px;
    text-align: right;
  }
  .state .in {
    color: var(--ink-2);
  }
  .calls {
    table-layout: fixed;
    min-width: 780px;
  }
  .k-part {
    width: 190px;
  }
  .k-odds {
    width: 80px;
  }
  .k-cost {
    width: 71px;
  }
  .k-by {
    width: 62px;
  }
  tbody tr:nth-child(5n) > * {
    border-bottom-color: var(--rule);
  }
  tbody tr.fifth > * {
    border-bottom-color: var(--rule-2);
  }
  tbody th {
    white-space: normal;
    overflow-wrap: anywhere;
    cursor: pointer;
  }
  tbody td {
    cursor: pointer;
  }
  thead th[data-call] {
    vertical-align: top;
    padding-left: 2px;
    padding-right: 12px;
    text-wrap: balance;
  }
  thead .glyph {
    margin: 0 0 4px auto;
    color: var(--c);
  }
  thead th.by {
    white-space: nowrap;
  }
  td.cost {
    position: relative;
    padding-right: 12px;
  }
  td.cost.chosen,
  tbody tr:hover > td.cost.chosen,
  tbody tr.picked > td.cost.chosen {
    color: var(--c);
    font-weight: 700;
    background: var(--w);
    box-shadow: inset 0 -2px 0 var(--c);
  }
  td.cost.best:not(.chosen) {
    font-weight: 700;
  }
  td.cost .depth {
    display: block;
    margin-top: -1px;
    font: 500 var(--t-1) / 1 var(--face-sign);
    white-space: nowrap;
    color: var(--ink-2);
  }
  /* The tag beside it says so in words. */
  td.cost.chosen .depth {
    display: none;
  }
  td.cost:has(.depth, .in) {
    line-height: 1.05;
  }
  /* Over its figure: beside a long one there is no room for it. */
  td.cost .in {
    display: block;
    margin-bottom: -1px;
    font: 600 var(--t-1) / 1 var(--face-sign);
    color: var(--ink-2);
  }
  td.na {
    color: var(--ink-3);
    padding-left: 2px;
    padding-right: 10px;
    font: 400 var(--t-2) / 1.1 var(--face-sign);
    white-space: nowrap;
  }
  td.na.held {
    color: var(--ink-2);
    font: 600 var(--t-2) / 1.1 var(--face-sign);
  }
  td.na.held span {
    display: inline-block;
    padding: 3px 5px;
    margin-right: -6px;
    border: 1px dashed var(--ink-3);
    border-radius: var(--r-1);
    background: var(--sheet);
  }
  td.na.barred {
    color: var(--pen);
    font-weight: 600;
  }
  .barred-sign {
    width: 10px;
    height: 10px;
    margin-right: 3px;
    vertical-align: -1px;
  }
  .callcell .call {
    min-width: 164px;
  }
  .odds {
    display: flex;
    align-items: center;
    justify-content: flex-end;
    gap: 8px;
  }
  .odds svg {
    width: 34px;
    height: 6px;
  }
  .odds .track {
    fill: var(--sheet-3);
  }
  .odds .fill {
    fill: var(--ink-2);
  }
  .odds .fig {
    min-width: 20px;
    text-align: right;
  }
  .waiting {
    color: var(--ink-2);
    padding: 3px 8px;
    background: repeating-linear-gradient(115deg, var(--sheet-3) 0 3px, var(--sheet) 3px 7px);
  }
  .over {
    color: var(--pen);
  }
  tr.picked > *,
  tr.picked:hover > * {
    background-color: var(--sheet-3);
  }
  tr.picked > th {
    box-shadow: inset 4px 0 0 var(--ink);
  }
  tr.refusal > td {
    height: auto;
    padding: 6px 16px 7px;
    background: var(--fault-wash);
    color: var(--ink);
    border-top: 1px solid var(--fault-rule);
    border-bottom: 1px solid var(--fault-rule);
    cursor: default;
    white-space: normal;
  }
  tr.refusal .inner {
    display: flex;
    align-items: baseline;
    gap: 9px;
  }
  tr.refusal svg {
    width: 13px;
    height: 13px;
    flex: none;
    align-self: center;
    color: var(--fault);
  }
  tr.refusal .plain {
    margin-left: auto;
  }
  [data-col]:focus {
    outline: none;
  }
  [data-col]:focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: -2px;
  }
  .waits-note {
    margin: 0;
    padding: 12px 16px 13px;
    border-top: 1px solid var(--rule);
    color: var(--ink-2);
    background: repeating-linear-gradient(115deg, var(--sheet-3) 0 3px, var(--sheet) 3px 7px);
  }
  .waits-note span {
    background: var(--sheet);
    padding: 3px 8px;
  }
  .calls.old td.cost {
    text-decoration: underline dotted var(--rule-3);
    text-underline-offset: 4px;
  }

  /* narrower benches: the bars go first, then the room between figures */
  @container (max-width: 62.8em) {
    .odds svg {
      display: none;
    }
    .k-part {
      width: 164px;
    }
    .k-odds {
      width: 60px;
    }
    .k-cost {
      width: 66px;
    }
    .k-by {
      width: 60px;
    }
    td.na,
    td.na.held {
      font-size: var(--t-1);
    }
    td.cost .in {
      display: none;
    }
    .callcell .call {
      min-width: 0;
    }
    .calls {
      min-width: 0;
    }
  }

  /* too narrow for a column a call: each part folds to two lines */
  @container (max-width: 57em) {
    .state .calm {
      display: inline-block;
      visibility: hidden;
    }
    .state .in {
      display: none;
    }
    .calls {
      min-width: 0;
    }
    .calls,
    .calls tbody {
      display: block;
    }
    .calls colgroup {
      display: none;
    }
    .calls thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .calls tbody tr {
      display: grid;
      grid-template-columns: minmax(0, 1fr) auto;
      grid-template-areas: 'name cost' 'call by';
      align-items: center;
      gap: 3px 10px;
      min-height: 60px;
      padding: 7px 12px 8px;
      border-bottom: 1px solid var(--rule);
    }
    .calls tbody tr.fifth {
      border-bottom-color: var(--rule-2);
    }
    .calls tbody tr:last-child {
      border-bottom: 0;
    }
    .calls tbody tr > * {
      border: 0 !important;
      height: auto;
      padding: 0 !important;
      background: none !important;
      box-shadow: none !important;
    }
    .calls tbody tr > th {
      grid-area: name;
      font: 600 var(--t-4a) / 1.25 var(--face-sign);
      white-space: normal;
    }
    .calls tbody tr > td.cost,
    .calls tbody tr > td.oddscell {
      display: none;
    }
    .calls tbody tr > td.cost.chosen {
      display: block;
      grid-area: cost;
      font: 600 var(--t-4b) / 1.25 var(--face-sign);
      color: var(--ink);
    }
    .calls tbody tr > td.cost.chosen::after {
      content: ' ' attr(data-money);
      font: 400 var(--t-2) / 1 var(--face-read);
      color: var(--ink-2);
    }
    .calls tbody tr > td.callcell {
      grid-area: call;
    }
    .calls tbody tr > td.bycell {
      grid-area: by;
      font-size: var(--t-2);
      color: var(--ink-2);
    }
    .calls tbody tr > td.bycell.best::before {
      content: 'best by ';
    }
    .calls tbody tr.picked {
      background: var(--sheet-3);
      box-shadow: inset 4px 0 0 var(--ink);
    }
    .calls tbody tr.refusal {
      display: block;
      min-height: 0;
      background: var(--fault-wash);
    }
    .call {
      min-height: 28px;
    }
    .callcell .call {
      min-width: 158px;
    }
  }
`;
