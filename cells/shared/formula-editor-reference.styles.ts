import { css } from 'lit';

export const referenceStyles = css`
  dialog {
    width: min(760px, calc(100vw - 24px));
    max-height: min(860px, calc(100vh - 32px));
    padding: 0;
    border: 0;
    border-top: 3px solid var(--ink);
    border-radius: var(--r-3);
    background: var(--sheet);
    color: var(--ink);
    box-shadow: var(--lift-2);
    overflow: hidden;
  }
  dialog[open] {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    grid-template-rows: auto minmax(0, 1fr);
  }
  dialog::backdrop {
    background: var(--scrim);
  }
  header {
    display: flex;
    align-items: center;
    gap: 14px;
    padding: 12px 14px 12px 24px;
    border-bottom: 1px solid var(--ink-2);
  }
  header label {
    margin-left: auto;
    min-width: 0;
  }
  h2 {
    font: 600 var(--t-6b) / 1.2 var(--face-sign);
  }
  input {
    min-height: 34px;
    width: min(26ch, 44vw);
    max-width: 100%;
    padding: 0 10px;
    border: 1px solid var(--rule-3);
    border-radius: var(--r-2);
    background: var(--sheet);
    color: var(--pen);
    font: 500 var(--t-3) / 1.2 var(--face-read);
  }
  .x {
    display: grid;
    place-items: center;
    width: 32px;
    height: 32px;
    border: 0;
    background: none;
    color: inherit;
    cursor: pointer;
  }
  .list {
    overflow-y: auto;
    padding: 0 24px 20px;
  }
  h3 {
    position: sticky;
    top: 0;
    padding: 12px 0 6px;
    background: var(--sheet);
    border-bottom: 1px solid var(--rule-2);
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
  }
  article {
    padding: 10px 0 12px;
    border-bottom: 1px solid var(--rule);
    line-height: 1.45;
  }
  h4 {
    display: flex;
    gap: 12px;
    align-items: baseline;
    justify-content: space-between;
    font-weight: 400;
  }
  code {
    font: 600 var(--t-4) / 1.4 var(--face-raw);
    overflow-wrap: anywhere;
  }
  h4 code span {
    font-weight: 400;
    color: var(--ink-2);
  }
  dl {
    margin: 4px 0;
  }
  dl div {
    display: grid;
    grid-template-columns: minmax(90px, 18ch) minmax(0, 1fr);
    gap: 12px;
    padding: 1px 0;
  }
  dt code {
    font-size: var(--t-3);
    font-weight: 400;
  }
  .unit {
    color: var(--ink-2);
    font-style: italic;
  }
  .small {
    font-size: var(--t-2);
    color: var(--ink-2);
  }
  .example {
    padding: 3px 0;
  }
  .none {
    padding: 20px 0;
    color: var(--ink-2);
  }
  @media (max-width: 720px) {
    header,
    .list {
      padding-inline: 14px;
    }
    dl div {
      grid-template-columns: minmax(0, 1fr);
      gap: 0;
      padding: 3px 0;
    }
    input,
    .x {
      min-height: var(--touch);
      min-width: var(--touch);
    }
  }
`;
