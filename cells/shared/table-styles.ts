import { css } from 'lit';

/** The grid of tables and pairings, on top of the tables of sheet-table-styles.ts. */
export const gridStyles = css`
  /* collapsed borders do not travel with cells that stick to an edge */
  table {
    border-collapse: separate;
    border-spacing: 0;
  }
  .scroll {
    position: relative;
    scrollbar-width: thin;
    scrollbar-color: var(--rule-3) transparent;
  }
  .scroll.tall {
    overflow-y: auto;
    max-height: min(640px, 68vh);
    border-bottom: 1px solid var(--rule-2);
  }
  /* closer than other tables, so that those of a trip fit on the bench */
  th,
  td {
    padding-inline: 6px;
    white-space: nowrap;
  }
  /* An edit paints the rows that it changes. Where rows come and go with every scroll that would cost more than it saves. */
  .scroll:not(.tall) tbody tr {
    isolation: isolate;
  }
  /* what hangs out of a figure that is written in lies over the next row */
  .scroll:not(.tall) tbody tr:focus-within {
    position: relative;
    z-index: 2;
  }
  tbody tr.fifth > * {
    border-bottom-color: var(--rule-2);
  }
  tbody tr.fifth > td.pen-cell {
    --under: var(--rule-2);
    border-bottom-color: transparent;
  }
  tbody tr:last-child > * {
    border-bottom: 0;
  }
  tr.gap td {
    height: var(--gap-px);
    padding: 0;
    border: 0;
    background: none;
  }

  /* head */
  thead th {
    position: relative;
    z-index: 1;
  }
  .tall thead th {
    position: sticky;
    top: 0;
    z-index: 3;
  }
  thead th > button {
    all: unset;
    box-sizing: border-box;
    display: block;
    width: 100%;
    min-width: 3ch;
    cursor: pointer;
    border-radius: var(--r-1);
  }
  thead th > button:focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: 2px;
  }
  thead th > button:hover .t,
  thead th > button[aria-expanded='true'] .t {
    text-decoration: underline;
    text-decoration-color: var(--rule-3);
    text-underline-offset: 3px;
  }
  thead th > button[aria-expanded='true'] .t {
    color: var(--ink);
    text-decoration-color: currentColor;
  }
  thead th .t {
    display: block;
    width: max-content;
    max-width: 16ch;
    white-space: normal;
    text-wrap: balance;
  }
  thead th.num .t {
    margin-left: auto;
  }
  thead th .u.bad {
    color: var(--fault);
    font-weight: 600;
  }
  thead th .u.busy {
    color: var(--ink);
    font-weight: 600;
  }
  thead th .u svg {
    display: inline-block;
    width: 11px;
    height: 11px;
    margin-right: 4px;
    vertical-align: -1px;
  }

  /* the first column stays in sight */
  th.stick {
    position: sticky;
    left: 0;
    z-index: 2;
    background: var(--sheet);
  }
  thead th.stick {
    background: var(--sheet-2);
    z-index: 3;
  }
  .tall thead th.stick {
    z-index: 4;
  }
  .scroll[data-scrolled] th.stick {
    box-shadow: 1px 0 0 var(--rule-2);
  }
  tbody th .name {
    display: inline-block;
    max-width: 30ch;
    overflow: hidden;
    text-overflow: ellipsis;
    vertical-align: bottom;
  }
  tbody th.again .name {
    color: var(--ink-3);
    font-weight: 400;
  }
  tbody th.writes:hover {
    background: var(--pen-wash);
  }

  /* figures */
  td .text {
    display: inline-block;
    max-width: 34ch;
    overflow: hidden;
    text-overflow: ellipsis;
    vertical-align: bottom;
  }
  td.pen-text {
    color: var(--pen);
    cursor: text;
  }
  td.pen-text:hover {
    background: var(--pen-wash);
  }
  td.pen-cell {
    cursor: text;
  }
  td.gap {
    color: var(--ink-3);
  }
  tbody tr:hover > td.waits {
    background: repeating-linear-gradient(115deg, var(--sheet-3) 0 3px, var(--sheet) 3px 7px);
  }
  tbody tr:hover > td.bad {
    background: var(--fault-wash);
  }
  td.bad .why {
    margin-left: 6px;
    font: 400 var(--t-1) / 1 var(--face-read);
  }
  td.old > .fig {
    text-decoration: underline dotted var(--rule-3);
    text-underline-offset: 4px;
  }
  .surf {
    display: inline-flex;
    align-items: center;
    gap: 8px;
  }
  .surf svg {
    width: 34px;
    height: 10px;
    color: var(--ink-2);
    flex: none;
  }
  .shared {
    display: inline-flex;
    align-items: center;
    justify-content: flex-end;
    gap: 8px;
  }
  .share {
    width: 34px;
    height: 6px;
  }
  .share .track {
    fill: var(--sheet-3);
  }
  td.worked .share .track {
    fill: var(--rule);
  }
  .share .fill {
    fill: var(--ink-2);
  }

  /* the picked row */
  tbody tr.picked > *,
  tbody tr.picked:hover > * {
    background-color: var(--sheet-3);
  }
  tbody tr.picked > th {
    box-shadow: inset 4px 0 0 var(--ink);
  }
  .scroll[data-scrolled] tbody tr.picked > th.stick {
    box-shadow:
      inset 4px 0 0 var(--ink),
      1px 0 0 var(--rule-2);
  }

  /* the marked block: washed, with its edge drawn by the figures themselves */
  tbody tr > td.marked,
  tbody tr:hover > td.marked,
  tbody tr > th.marked,
  tbody tr.picked > .marked {
    background-color: var(--pen-wash);
    box-shadow: inset 0 0 0 0.5px var(--pen-rule);
  }
  thead th .way {
    display: inline-block;
    width: 8px;
    height: 7px;
    margin-left: 6px;
    background: currentColor;
    clip-path: polygon(50% 0, 100% 100%, 0 100%);
  }
  thead th .way.descending {
    clip-path: polygon(0 0, 100% 0, 50% 100%);
  }
  .by-touch {
    display: none;
  }
  @media (any-pointer: coarse) {
    .by-touch {
      display: inline;
    }
  }

  /* writing in a cell: the field lies over the figure, so that the column keeps its width */
  .writing {
    position: relative;
    overflow: visible;
  }
  th.stick.writing {
    position: sticky;
    z-index: 5;
  }
  .writing > .held {
    visibility: hidden;
  }
  .writing > sw-figure-field {
    position: absolute;
    top: 0;
    bottom: 0;
    left: 0;
    width: max(100%, 148px);
    z-index: 6;
    background: var(--sheet);
    white-space: normal;
  }
  .writing.num > sw-figure-field {
    left: auto;
    right: 0;
    width: max(100%, 92px);
  }
  /* named by what they are: by their places, every row that comes into view would be styled anew */
  :is(th, td, th > button, th > div):focus {
    outline: none;
  }
  :is(th, td, th > button, th > div):focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: -2px;
  }

  /* under the table */
  .tip {
    position: fixed;
    inset: auto;
    margin: 0;
    max-width: min(340px, calc(100vw - 24px));
    padding: 7px 10px 8px;
    border: 1px solid var(--fault);
    border-radius: var(--r-2);
    background: var(--fault-wash);
    color: var(--ink);
    font: 400 var(--t-2) / 1.4 var(--face-read);
    box-shadow: var(--lift-2);
    white-space: pre-line;
  }
  .faults-head {
    display: flex;
    align-items: center;
    gap: 8px;
    padding: 8px 16px 6px;
    border-top: 1px solid var(--fault);
    color: var(--fault);
    font: 600 var(--t-3) / 1.3 var(--face-sign);
  }
  .faults-head svg {
    width: 13px;
    height: 13px;
  }
  .faults li {
    display: grid;
    grid-template-columns: minmax(110px, 0.7fr) minmax(0, 2fr) auto;
    gap: 4px 14px;
    align-items: baseline;
    margin: 0 16px;
    padding: 6px 0 7px;
    border-top: 1px solid var(--rule);
    font-size: var(--t-2);
  }
  .faults .where {
    font: 600 var(--t-2) / 1.35 var(--face-sign);
    color: var(--ink-2);
  }
  .faults code {
    font: 400 var(--t-2) / 1.3 var(--face-raw);
    color: var(--fault);
    text-decoration: underline wavy 1px;
    text-underline-offset: 3px;
    margin-right: 8px;
  }
  .faults .mend {
    color: var(--ink-2);
  }
  @media (max-width: 720px) {
    thead th > button {
      margin-block: -22px -6px;
      padding-block: 22px 6px;
    }
    /* two lines of a name fit the height of a row */
    tbody th .name {
      display: -webkit-inline-box;
      -webkit-box-orient: vertical;
      -webkit-line-clamp: 2;
      width: max-content;
      max-width: 15ch;
      line-height: 1.15;
      white-space: normal;
      vertical-align: middle;
    }
    .faults-head,
    .more {
      padding-inline: 12px;
    }
    .more .grow {
      gap: 0 10px;
      margin-left: 0;
    }
    .more .plain {
      padding-inline: 0;
    }
    .faults li {
      margin-inline: 12px;
      grid-template-columns: minmax(0, 1fr);
    }
    .faults li .plain {
      justify-self: start;
      padding-left: 0;
    }
  }
`;
