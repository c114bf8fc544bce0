import { css } from 'lit';

/** The dialog's right side: its headings and questions, and the parts that rows are fitted to. */
export const importPartsStyles = css`
  h3 {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 10px;
    margin-bottom: 7px;
    font: 600 var(--t-4) / 1.3 var(--face-sign);
  }
  h3 small {
    font: 400 var(--t-2) / 1.2 var(--face-read);
    color: var(--ink-2);
  }
  h3.bad {
    color: var(--fault);
  }
  h3 .mark svg {
    width: 13px;
    height: 13px;
    vertical-align: -1px;
  }
  h3 .turns,
  h3 .confirm {
    margin-left: auto;
  }
  .question {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin-bottom: 14px;
    padding: 10px 14px 12px;
    background: var(--caution-wash);
    border-left: 8px solid var(--caution-hatch);
  }
  .question p {
    flex-basis: 100%;
    font-weight: 500;
    overflow-wrap: anywhere;
  }
  .question .btn {
    white-space: normal;
    line-height: 1.2;
    padding-block: 6px;
  }
  section + section,
  .two + section,
  .two {
    margin-top: 18px;
  }
  .lines {
    border-top: 1px solid var(--ink-2);
  }
  .lines > li {
    display: grid;
    grid-template-columns: 176px minmax(0, 1fr) 72px;
    gap: 4px 14px;
    align-items: start;
    padding: 4px 0;
    border-bottom: 1px solid var(--rule);
  }
  .lines > li > b,
  .offers > .quiet {
    padding: 3px 0;
    font-weight: 500;
  }
  .lines > li > .plain {
    justify-self: end;
  }
  .lines sw-part-finder {
    grid-column: 1 / -1;
  }
  .offers {
    display: grid;
  }
  .offers label {
    display: grid;
    grid-template-columns: 20px minmax(0, 1fr) auto;
    gap: 8px;
    align-items: start;
    padding: 3px 0;
    cursor: pointer;
  }
  .offers input,
  .all input {
    width: 16px;
    height: 16px;
    margin: 1px 0 0;
    accent-color: var(--pen);
  }
  .offers .taken .what {
    color: var(--pen);
  }
  .offers .maybe {
    color: var(--ink-2);
  }
  .what {
    overflow-wrap: anywhere;
  }
  .what em {
    font-style: normal;
    font-weight: 600;
    font-size: var(--t-2);
    color: var(--ink-3);
  }
  .what small {
    display: block;
    font-size: var(--t-2);
    color: var(--ink-2);
  }
  .all {
    display: flex;
    gap: 8px;
    align-items: center;
    padding: 8px 0;
  }
  fieldset {
    border-top: 1px solid var(--ink-2);
    padding-top: 4px;
  }
  .two {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 20px 28px;
    align-items: start;
  }
  .two section {
    margin: 0;
    min-width: 0;
  }
  .mainpart .hint {
    margin: 6px 0 0;
  }
  @media (min-width: 1100px) {
    .two:has(section + section) {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1.3fr);
    }
  }
  @media (max-width: 720px) {
    .lines > li {
      grid-template-columns: minmax(0, 1fr) auto;
    }
    .lines > li > b {
      align-self: center;
    }
    .offers {
      grid-column: 1 / -1;
      grid-row: 2;
    }
    .offers label,
    .all {
      min-height: var(--touch);
      align-content: center;
      align-items: center;
    }
    h3 .turns,
    h3 .confirm {
      margin-left: 0;
    }
  }
`;
