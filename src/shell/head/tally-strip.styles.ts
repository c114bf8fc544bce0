import { css } from 'lit';

const wrapped = css`
  .tally {
    grid-template-columns: repeat(3, minmax(0, 1fr));
  }
  .tl.edit {
    grid-column: 1 / -1;
  }
  .top,
  .top.same,
  .fig,
  .note,
  .edit .what {
    height: auto;
    overflow: visible;
    white-space: normal;
  }
`;

export const tallyStripStyles = css`
  :host {
    display: block;
    position: sticky;
    top: 0;
    z-index: 20;
    container-type: inline-size;
  }
  .tally {
    display: grid;
    grid-template-columns: var(--columns);
    background: var(--sheet);
    border-bottom: 2px solid var(--ink);
    padding-left: 24px;
  }
  .tl {
    display: flex;
    flex-direction: column;
    justify-content: flex-start;
    padding: 10px 18px 11px 0;
    min-width: 0;
    text-align: left;
  }
  .gauge {
    align-self: stretch;
  }
  .tl + .tl {
    padding-left: 18px;
    border-left: 1px solid var(--rule);
  }
  button.tl {
    border: 0;
    background: none;
    cursor: pointer;
  }
  button.tl:hover .fig {
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-decoration-color: var(--rule-3);
    text-underline-offset: 5px;
  }
  .tl:focus-visible {
    outline-offset: -3px;
  }
  .top {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: 8px;
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
    white-space: nowrap;
    align-content: flex-start;
    height: 1.2em;
  }
  .top > :first-child {
    overflow: hidden;
    text-overflow: ellipsis;
  }
  /* Where both do not fit, 'no change' gives way to the label. */
  .top.same {
    flex-wrap: wrap;
    height: 1.2em;
    overflow: hidden;
  }
  .delta {
    font-weight: 600;
    color: var(--ink);
  }
  .delta.none {
    font-weight: 500;
    color: var(--ink-3);
  }
  .over {
    color: var(--fault);
  }
  .fig {
    display: block;
    font: 600 var(--t-7) / 1.1 var(--face-sign);
    font-feature-settings: 'tnum';
    margin-top: 3px;
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .fig.working {
    text-decoration: underline dotted var(--rule-3);
    text-underline-offset: 5px;
  }
  .fig.none {
    font-weight: 400;
    color: var(--ink-3);
  }
  .fig small {
    font: 400 var(--t-2) / 1 var(--face-read);
    color: var(--ink-2);
    margin-left: 3px;
  }
  .note {
    display: block;
    margin-top: 4px;
    font-size: var(--t-2);
    color: var(--ink-2);
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .edit {
    background: var(--sheet-2);
    padding-right: 24px;
  }
  .edit .what {
    font: 600 var(--t-4) / 1.25 var(--face-sign);
    margin-top: 5px;
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .edit .what.none {
    font-weight: 500;
    color: var(--ink-2);
    white-space: normal;
  }
  .edit .row {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: 12px;
    margin-top: 2px;
    font-size: var(--t-2);
    color: var(--ink-2);
  }
  .edit .row > span:first-child {
    min-width: 0;
    white-space: nowrap;
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .edit.alone {
    flex-direction: row;
    align-items: baseline;
    flex-wrap: wrap;
    gap: 2px 18px;
    padding-left: 18px;
  }
  .edit.alone .what,
  .edit.alone .row {
    margin: 0;
  }
  .edit.alone .row {
    flex: 1;
  }
  @media (max-width: 1380px) {
    .edit .what {
      font-size: var(--t-3);
    }
  }
  @media (max-width: 1240px) {
    .tally {
      grid-template-columns: repeat(4, minmax(0, 1fr));
      padding-left: 0;
    }
    .tl,
    .tl + .tl {
      padding: 7px 12px 8px;
    }
    .tl.edit {
      grid-column: span 2;
    }
    .tl:nth-child(n + 5) {
      border-top: 1px solid var(--rule);
    }
    .tl:nth-child(4n + 1) {
      border-left: 0;
    }
  }
  @media (max-width: 720px) {
    .tl,
    .tl + .tl {
      padding: 6px 6px 7px 8px;
      border-left: 1px solid var(--rule);
    }
    .tl:nth-child(4n + 1) {
      border-left: 0;
    }
    .top {
      font-size: var(--t-1);
    }
    .g .delta,
    .fig .unit {
      display: none;
    }
    /* The limit gives way where it does not fit: the gauge and what is left still tell it. */
    .fig {
      display: flex;
      flex-wrap: wrap;
      align-items: baseline;
      height: 1.2em;
      margin-top: 1px;
      font-size: var(--t-4b);
      line-height: 1.2;
      text-overflow: clip;
    }
    .fig small {
      line-height: 1.4;
    }
    .fig small {
      font-size: var(--t-1);
    }
    .gauge {
      margin-top: 4px;
      height: 5px;
    }
    .wide,
    .tl.wide + .tl.wide {
      grid-column: span 2;
      border-top: 1px solid var(--rule);
      display: grid;
      grid-template-columns: minmax(0, 1fr) auto;
      grid-template-rows: 1.3rem 0.85rem;
      align-items: center;
      column-gap: 10px;
      padding: 4px 10px;
    }
    .wide .top {
      display: contents;
    }
    .wide .top > :first-child {
      grid-column: 1;
      grid-row: 1 / 3;
      font: 500 var(--t-1) / 1.15 var(--face-sign);
      white-space: normal;
      text-wrap: balance;
    }
    .wide .fig {
      grid-column: 2;
      grid-row: 1 / 3;
      justify-content: flex-end;
      margin: 0;
    }
    .wide .top:has(.delta) + .fig {
      grid-row: 1;
    }
    .wide .delta {
      grid-column: 2;
      grid-row: 2;
      justify-self: end;
      font: 600 var(--t-1) / 1 var(--face-sign);
      white-space: nowrap;
    }
    .wide .fig .unit {
      display: inline;
    }
    .note,
    .tl.edit {
      display: none;
    }
    .tl.edit.alone {
      display: block;
      grid-column: 1 / -1;
    }
  }
  /* Large text in a page that is wide enough for the bench: fewer columns, and words that wrap. */
  @media (min-width: 721px) {
    @container (max-width: 50em) {
      ${wrapped}
    }
  }
  @media (min-width: 1241px) {
    @container (max-width: 84em) {
      ${wrapped}
    }
  }
  /* The same on a phone. */
  @container (max-width: 18em) {
    .tally {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
    .tl:nth-child(odd) {
      border-left: 0;
    }
    .top,
    .top.same,
    .fig {
      height: auto;
      overflow: visible;
      white-space: normal;
    }
    .top > :first-child,
    .fig small {
      overflow: visible;
    }
    .wide,
    .tl.wide + .tl.wide {
      display: block;
    }
    .tl.edit.alone {
      grid-column: 1 / -1;
    }
  }
`;
