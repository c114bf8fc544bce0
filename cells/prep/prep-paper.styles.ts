import { css } from 'lit';

/** The prep sheet on paper: rows close together, lists side by side where two fit. */
export const prepPaperStyles = css`
  /* On the screen the tally says it, and a line that comes and goes would move the sheet. */
  @media not print {
    .unfinished {
      display: none;
    }
  }
  @media print {
    .unfinished {
      margin-top: 5px;
      padding: 2px 8px;
      border: 2px solid var(--ink);
      font-size: 13px;
      font-weight: 600;
    }
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
      height: 16px;
      line-height: 1.2;
    }
    .page tr.group > * {
      height: 18px;
      padding-bottom: 1px;
    }
    .page tfoot td,
    .page tfoot th {
      border-top: 0;
      box-shadow: none;
    }
    .page tfoot tr:first-child > * {
      border-top: 3px double var(--ink);
    }
    .warn {
      margin-top: 7px;
      padding: 3px 10px 4px;
      line-height: 1.25;
    }
    .list {
      padding-top: 6px;
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
      width: 60px;
    }
    .jobs th.write {
      white-space: normal;
    }
    .jobs td.write i:not(:only-child) {
      width: 34px;
    }
    .jobs tbody th {
      white-space: nowrap;
    }
    td.write i {
      height: 12px;
    }
    .sign {
      padding-top: 20px;
    }
    .sign span {
      padding-top: 2px;
      font-size: var(--t-1);
      line-height: 1.1;
    }
    .legend {
      gap: 2px 10px;
      margin-top: 5px;
      padding-top: 3px;
      font-size: var(--t-1);
    }
    .page .glyph {
      height: 13px;
    }
    .legend .glyph {
      margin-right: 0;
    }
    /* a list that fits into one column is not begun at the very foot of a page */
    .pair .list:nth-child(-n + 2) {
      break-inside: avoid;
    }
    .pair .write {
      width: 72px;
    }
    .page .pair .write {
      padding-left: 7px;
    }
    .pair td.write i {
      width: 34px;
    }
    .pair th,
    .pair td {
      padding-right: 4px;
    }
    .pair thead .num {
      white-space: nowrap;
    }
    .page .pair .num + .num {
      padding-left: 5px;
    }
  }
`;
