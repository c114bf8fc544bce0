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
`;
