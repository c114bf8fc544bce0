import { css } from 'lit';

/** The prep sheet on paper: rows close together, lists side by side where two fit. */
export const prepPaperStyles = css`
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
