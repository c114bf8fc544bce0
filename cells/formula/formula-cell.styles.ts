import { css } from 'lit';

export const formulaCellStyles = css`
  .fcard {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto minmax(62px, auto);
    column-gap: 18px;
    padding: 7px 16px 8px;
    align-items: center;
    min-height: 52px;
  }
  .label {
    display: flex;
    align-items: baseline;
    flex-wrap: wrap;
    gap: 2px 10px;
  }
  .label h2 {
    font: 600 var(--t-3) / 1.3 var(--face-sign);
    color: var(--ink-2);
    white-space: normal;
  }
  .label .gist {
    font-size: var(--t-2);
    color: var(--ink-3);
  }
  /* a long formula takes a second line, what is said of its units stays beside it */
  .line {
    display: flex;
    align-items: center;
    gap: 2px 18px;
  }
  .fx {
    min-width: 0;
    cursor: pointer;
    text-align: left;
    border-radius: var(--r-1);
  }
  .fx:hover {
    background: var(--pen-wash);
  }
  .unit {
    color: var(--ink-2);
    font-size: var(--t-2);
    line-height: 1.35;
    padding-left: 18px;
    border-left: 1px solid var(--rule);
    flex: none;
    max-width: 45%;
  }
  .res {
    all: unset;
    text-align: right;
    font: 600 var(--t-5) / 1.3 var(--face-sign);
    white-space: nowrap;
    cursor: pointer;
    padding: 0 1px;
  }
  .res:hover {
    text-decoration: underline;
    text-decoration-color: var(--rule-3);
    text-underline-offset: 4px;
  }
  .res:focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: 2px;
  }
  .res small {
    font: 400 var(--t-2) / 1 var(--face-read);
    color: var(--ink-2);
  }
  .res.none {
    color: var(--fault);
    font-size: var(--t-4);
  }
  .res.old {
    text-decoration: underline dotted var(--rule-3);
    text-underline-offset: 4px;
  }
  .fcard .state {
    margin: 0;
    justify-content: flex-end;
  }
  .fcard .link {
    margin-right: 2px;
  }
  .sheet > .write {
    padding: 2px 16px 12px;
  }
  .nameline {
    display: grid;
    grid-template-columns: minmax(120px, 240px) auto;
    justify-content: start;
    gap: 4px 12px;
    align-items: baseline;
    margin-bottom: 8px;
    font: 400 var(--t-2) / 1.3 var(--face-read);
    color: var(--ink-2);
  }
  @media (max-width: 720px) {
    .fcard {
      grid-template-columns: minmax(0, 1fr) auto;
      padding: 8px 12px 10px;
      row-gap: 3px;
    }
    .fcard > .what {
      grid-column: 1 / -1;
    }
    .line {
      flex-wrap: wrap;
    }
    .unit {
      flex: 0 1 auto;
      max-width: none;
      padding-left: 0;
      border-left: 0;
    }
    .res {
      text-align: left;
      min-height: var(--touch);
      line-height: var(--touch);
      margin-block: -4px;
    }
    .fcard .link {
      display: none;
    }
    .sheet > .write {
      padding-inline: 12px;
    }
  }
`;
