import { css } from 'lit';

export const prepCellStyles = css`
  .acts {
    display: inline-flex;
    gap: 12px;
  }
  .page {
    padding: 6px 16px 16px;
  }
  .top {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: flex-end;
    gap: 4px 24px;
    padding-bottom: 8px;
    border-bottom: 3px solid var(--ink);
  }
  .top h3 {
    font: 700 var(--t-7b) / 1.1 var(--face-sign);
  }
  .top .cut {
    font-size: var(--t-3);
  }
  .sight {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 28px;
    padding: 8px 0;
    border-bottom: 1px solid var(--ink-2);
  }
  .sight .fig > span {
    display: block;
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
  }
  .sight b {
    font: 600 var(--t-5) / 1.15 var(--face-sign);
  }
  .sight small,
  td small,
  th small {
    font-size: var(--t-1);
    font-weight: 400;
    color: var(--ink-2);
  }

  .list {
    padding-top: 14px;
  }
  .list h4 {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: baseline;
    gap: 0 16px;
    padding-bottom: 3px;
    font: 600 var(--t-5) / 1.2 var(--face-sign);
    break-after: avoid;
  }
  .list h4 small {
    font: 600 var(--t-2) / 1.2 var(--face-sign);
  }
  .list .none {
    padding: 5px 0;
    border-top: 1px solid var(--ink-2);
    color: var(--ink-2);
  }
  .pair {
    columns: 2 300px;
    column-gap: 32px;
  }

  .page table {
    font-size: var(--t-3);
  }
  .page th,
  .page td {
    padding: 0 6px 0 0;
    height: 25px;
  }
  .page th:first-child,
  .page td:first-child {
    padding-left: 0;
  }
  .page th:last-child,
  .page td:last-child {
    padding-right: 0;
  }
  .page thead th {
    padding-top: 3px;
    padding-bottom: 3px;
    background: none;
    border-top: 1px solid var(--ink-2);
  }
  .page thead th .u {
    display: inline;
    margin-left: 4px;
  }
  .page tbody th {
    white-space: normal;
    text-wrap: pretty;
    line-height: 1.25;
  }
  .page tbody tr:last-child > * {
    border-bottom: 1px solid var(--rule);
  }
  .page tr.group > * {
    height: 27px;
    vertical-align: bottom;
    padding-bottom: 2px;
    border-bottom-color: var(--ink-2);
    font: 500 var(--t-2) / 1.2 var(--face-sign);
  }
  .page tr.group b,
  .page tr.group td {
    font-weight: 700;
  }
  .page tr {
    break-inside: avoid;
  }
  .page tr.group {
    break-after: avoid;
  }
  .page thead {
    display: table-header-group;
  }
  /* the sum stands once, at the end, not at the foot of every page */
  .page tfoot {
    display: table-row-group;
    break-before: avoid;
  }
  .page tfoot td,
  .page tfoot th {
    background: none;
    height: 26px;
  }
  .tick {
    width: 22px;
  }
  .tick i {
    display: block;
    width: 13px;
    height: 13px;
    border: 1.5px solid var(--ink);
  }
  .do .glyph,
  tbody th .glyph,
  .legend .glyph {
    display: inline-block;
    vertical-align: -3px;
    margin-right: 3px;
  }
  .do {
    white-space: nowrap;
  }
  .who {
    white-space: nowrap;
  }
  .page tbody th.hang {
    padding-left: 24px;
    text-indent: -24px;
  }
  .mind {
    line-height: 1.25;
    color: var(--ink-2);
  }
  .write {
    width: 92px;
    white-space: nowrap;
  }
  .jobs .write {
    width: 104px;
  }
  td.write i {
    display: inline-block;
    width: 56px;
    height: 15px;
    border-bottom: 1px solid var(--ink);
    margin-right: 4px;
  }
  td.write i:only-child {
    width: 100%;
    margin-right: 0;
  }
  .gap-says {
    color: var(--fault);
    font-weight: 600;
  }
  .warn {
    margin-top: 16px;
    padding: 8px 12px;
    border: 1.5px solid var(--ink);
    border-left-width: 10px;
    font-size: var(--t-3);
    line-height: 1.4;
    break-inside: avoid;
  }
  .sign {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(160px, 1fr));
    gap: 8px 36px;
    padding-top: 34px;
    break-inside: avoid;
    break-before: avoid;
  }
  .sign span {
    border-top: 1px solid var(--ink);
    padding-top: 3px;
    font-size: var(--t-2);
  }
  .legend {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 18px;
    margin-top: 10px;
    padding-top: 6px;
    border-top: 1px solid var(--ink-2);
    font-size: var(--t-2);
    break-inside: avoid;
  }
  @media (max-width: 720px) {
    .page {
      padding: 4px 12px 14px;
    }
  }
  /* On a phone's screen each line of the wide lists takes two or three; what is written by hand is for paper. */
  @media screen and (max-width: 720px) {
    .wide,
    .wide tbody,
    .wide tfoot {
      display: block;
    }
    .wide thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .wide tr {
      display: grid;
      grid-template-columns: 26px minmax(0, 1fr) auto;
      align-items: baseline;
      padding: 5px 0 6px;
      border-bottom: 1px solid var(--rule);
    }
    .page .wide tr > * {
      height: auto;
      padding: 0;
      border: 0;
      box-shadow: none;
    }
    .wide tr > .tick {
      grid-area: 1 / 1;
      align-self: start;
      padding-top: 3px;
    }
    .wide tr > th {
      grid-area: 1 / 2;
    }
    .wide tr.group,
    .wide tfoot tr {
      padding: 9px 0 4px;
      border-bottom-color: var(--ink-2);
    }
    .wide tr.group > th {
      grid-area: 1 / 1 / auto / 3;
    }
    .wide tr > td:empty {
      display: none;
    }
    .wide tr > .sum,
    .wide tr > th ~ td.num:not(.pieces, .each) {
      grid-area: 1 / 3;
    }
    .shop tbody tr:not(.group) {
      grid-template-columns: 26px auto minmax(0, 1fr) auto auto;
      column-gap: 0;
    }
    .shop tbody tr:not(.group) > th {
      grid-area: 1 / 2 / auto / 4;
    }
    .shop tbody tr:not(.group) > .sum {
      grid-area: 1 / 4 / auto / 6;
    }
    .shop tr > .nr,
    .shop tr > .do,
    .shop tr > .pieces,
    .shop tr > .each {
      grid-row: 2;
      padding-top: 2px;
      font-size: var(--t-2);
      color: var(--ink-2);
    }
    .page .shop tr > .nr {
      padding-right: 14px;
    }
    .shop tr > .do {
      white-space: normal;
    }
    .shop tr > .pieces::after {
      content: '\\00a0×\\00a0';
    }
    .jobs tr > .mind {
      grid-area: 2 / 2 / auto / 4;
      padding-top: 2px;
      font-size: var(--t-2);
    }
    .jobs tr > .write {
      display: none;
    }
    .pair .write {
      width: 74px;
      white-space: normal;
    }
    .pair td.write i:not(:only-child) {
      width: 34px;
    }
  }
  @media print {
    .sheet.prep,
    :host([selected]) .sheet.prep {
      border: 0;
      box-shadow: none;
      outline: 0;
    }
    .sheet.prep > header {
      display: none;
    }
    .page {
      padding: 0;
    }
    .page table,
    .warn {
      font-size: 12px;
    }
    .page th,
    .page td,
    .page tfoot td,
    .page tfoot th {
      height: 17px;
      line-height: 1.2;
    }
    .page tr.group > * {
      height: 19px;
      padding-bottom: 1px;
    }
    .warn {
      margin-top: 9px;
      padding: 5px 10px;
    }
    .list {
      padding-top: 7px;
    }
    .scroll {
      overflow: visible;
    }
    .pair {
      columns: 2;
      column-gap: 7mm;
    }
    .sight {
      gap: 4px 18px;
      padding: 5px 0;
    }
    .tick i {
      width: 11px;
      height: 11px;
    }
    .jobs .write {
      width: 72px;
    }
    .jobs td.write i:not(:only-child) {
      width: 42px;
    }
    .jobs tbody th {
      white-space: nowrap;
    }
    td.write i {
      height: 12px;
    }
    .sign {
      padding-top: 24px;
    }
    .legend {
      gap: 2px 14px;
      margin-top: 6px;
      padding-top: 4px;
      font-size: var(--t-1);
    }
    /* a list that fits into one column is not begun at the very foot of a page */
    .pair .list:nth-child(-n + 2) {
      break-inside: avoid;
    }
    .pair .write {
      width: 72px;
    }
    .pair td.write i {
      width: 34px;
    }
    .pair th,
    .pair td {
      padding-right: 4px;
    }
  }
`;
