import { css } from 'lit';

/** A formula as it is set in type (see typeset.ts): `.fx` round the whole. */
export const typesetStyles = css`
  .fx {
    font: 400 var(--t-fx) / 1.5 var(--face-ink);
    color: var(--ink);
    overflow-wrap: anywhere;
  }
  .fx i {
    font-style: italic;
  }
  .fx i,
  .fx sub {
    white-space: nowrap;
  }
  .fx .tbl {
    color: var(--ink-2);
  }
  .fx sub,
  .fx sup {
    font-size: 0.72em;
    line-height: 0;
    font-style: normal;
    margin-left: 0.06em;
  }
  .fx sub {
    vertical-align: -0.28em;
  }
  .fx sup {
    vertical-align: 0.5em;
  }
  .fx .op {
    padding: 0 0.28em;
    font-style: normal;
  }
  .fx .w {
    font: 400 0.78em/1 var(--face-read);
    color: var(--ink-2);
    padding: 0 0.34em;
  }
  .fx .n {
    font-family: var(--face-read);
    font-size: 0.86em;
    font-variant-numeric: tabular-nums;
    white-space: nowrap;
  }
  .fx .fn {
    font-style: normal;
  }
  .fx .str {
    font-style: normal;
    font-size: 0.94em;
  }
  .fx .big {
    display: inline-grid;
    justify-items: center;
    vertical-align: middle;
    line-height: 1;
    padding: 0 0.18em 0 0.1em;
  }
  .fx .big > span {
    font-size: 1.35em;
    line-height: 1;
  }
  .fx .big em {
    font: 400 var(--t-1) / 1.1 var(--face-read);
    color: var(--ink-2);
    margin-top: 1px;
    max-width: 20ch;
    text-align: center;
  }
  .fx .frac {
    display: inline-grid;
    justify-items: center;
    vertical-align: middle;
    line-height: 1.25;
    font-size: 0.86em;
  }
  .fx .frac > :first-child {
    border-bottom: 1px solid currentColor;
    padding: 0 0.3em 1px;
  }
  .fx .frac > :last-child {
    padding-top: 1px;
  }
  .fx .root > span {
    border-top: 1px solid currentColor;
    padding: 0.08em 0.15em 0;
  }
  .fx .cases {
    display: inline-grid;
    grid-template-columns: auto auto;
    justify-content: start;
    align-items: baseline;
    gap: 0 0.7em;
    vertical-align: middle;
    border-left: 1.5px solid currentColor;
    border-radius: 5px 0 0 5px;
    padding-left: 0.5em;
    margin: 3px 0 3px 0.15em;
    line-height: 1.45;
    font-size: 0.92em;
  }
  .fx .clash {
    color: var(--fault);
    font-weight: 700;
    padding: 0 0.2em;
    border-radius: var(--r-1);
    background: var(--fault-wash);
    text-decoration: underline wavy 1.5px;
    text-underline-offset: 4px;
  }
  .fx button {
    all: unset;
    cursor: pointer;
    border-bottom: 1px solid var(--rule-3);
  }
  .fx button:hover {
    border-bottom-color: currentColor;
  }
  .fx button:focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: 2px;
  }
  @media (max-width: 720px) {
    .fx .cases {
      grid-template-columns: auto;
    }
  }
`;
