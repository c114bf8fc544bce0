import { css } from 'lit';

/** On top of the styles of the list of notebooks. */
export const momentsDialogStyles = css`
  dialog {
    width: min(860px, calc(100vw - 24px));
  }
  form {
    display: flex;
    flex-wrap: wrap;
    gap: 10px 14px;
    align-items: end;
    padding: 12px 24px 14px;
    border-bottom: 1px solid var(--rule);
  }
  form label {
    flex: 1 1 240px;
    display: grid;
    gap: 5px;
  }
  .label {
    font: 500 var(--t-2) / 1.3 var(--face-sign);
    color: var(--ink-2);
  }
  .tick {
    display: inline-flex;
    gap: 6px;
    align-items: center;
    min-height: var(--hit);
    font: 600 var(--t-2) / 1.2 var(--face-sign);
  }
  .tick input {
    width: 16px;
    min-height: 16px;
    height: 16px;
    accent-color: var(--ink);
  }
  .beside {
    padding: 4px 24px 18px;
    background: var(--sheet-2);
  }
  .beside .none {
    padding-inline: 0;
  }
  .scroll {
    overflow-x: auto;
  }
  table {
    width: 100%;
    border-collapse: collapse;
    margin-top: 10px;
  }
  caption,
  h3 {
    padding: 8px 0 4px;
    text-align: left;
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
  }
  thead th {
    border-bottom: 1px solid var(--ink-2);
    color: var(--ink-2);
    font: 600 var(--t-2) / 1.3 var(--face-sign);
  }
  th,
  td {
    padding: 4px 12px 4px 0;
    text-align: right;
    border-bottom: 1px solid var(--rule);
    font-weight: 400;
  }
  th:first-child {
    text-align: left;
  }
  th:not(:first-child) {
    width: 9.5em;
  }
  th:last-child,
  td:last-child {
    padding-right: 0;
  }
  td {
    white-space: nowrap;
  }
  td.differs {
    font-weight: 700;
  }
  h3 {
    margin-top: 10px;
  }
  .plainly li {
    padding: 3px 0;
  }
  .plainly span + span {
    color: var(--ink-2);
  }
  @media (max-width: 720px) {
    form,
    .beside {
      padding-inline: 14px;
    }
    .tick {
      min-height: var(--touch);
    }
    th:not(:first-child) {
      width: 5.6em;
    }
    .words td {
      width: 7.4em;
      white-space: normal;
    }
  }
`;
