import { css } from 'lit';

/** The prep sheet on the screen of a phone. */
export const prepPhoneStyles = css`
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
    .page .shop tbody tr:not(.group) > .sum {
      grid-area: 1 / 4 / auto / 6;
      justify-self: end;
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
      grid-column: 2;
      padding-right: 14px;
      white-space: nowrap;
    }
    .shop tr > .do {
      grid-column: 3;
      white-space: normal;
    }
    .page .shop tr > .pieces {
      grid-column: 4;
      padding-left: 10px;
    }
    .shop tr > .each {
      grid-column: 5;
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
`;
