import { css } from 'lit';

export const notebooksDialogStyles = css`
  dialog {
    width: min(680px, calc(100vw - 24px));
    max-height: calc(100vh - 32px);
    padding: 0;
    border: 0;
    border-top: 3px solid var(--ink);
    border-radius: var(--r-3);
    background: var(--sheet);
    color: var(--ink);
    box-shadow: var(--lift-2);
    overflow-y: auto;
  }
  dialog::backdrop {
    background: var(--scrim);
  }
  header {
    display: flex;
    align-items: center;
    justify-content: space-between;
    padding: 14px 14px 10px 24px;
    border-bottom: 1px solid var(--ink-2);
  }
  h2 {
    font: 600 var(--t-6b) / 1.2 var(--face-sign);
  }
  .x {
    display: grid;
    place-items: center;
    width: var(--touch);
    height: var(--touch);
    border: 0;
    background: none;
    color: inherit;
    cursor: pointer;
  }
  li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 6px 18px;
    padding: 11px 24px;
    border-bottom: 1px solid var(--rule);
  }
  .what {
    display: grid;
    gap: 2px;
    min-width: 0;
    flex: 1 1 240px;
    color: var(--ink-2);
  }
  b {
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
    color: var(--ink);
    overflow-wrap: anywhere;
  }
  input {
    width: 100%;
    min-height: 32px;
    padding: 0 6px;
    border: 0;
    border-bottom: 1px solid var(--pen-rule);
    background: var(--pen-wash);
    color: var(--pen);
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0 12px;
  }
  .bad {
    display: flex;
    gap: 8px;
    align-items: baseline;
    color: var(--fault);
    font-weight: 500;
  }
  .bad svg {
    flex: none;
    width: 13px;
    height: 13px;
    align-self: center;
  }
  .none,
  .taken,
  p.bad {
    padding: 12px 24px;
    color: var(--ink-2);
  }
  p.bad {
    color: var(--fault);
  }
  footer {
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    gap: 10px;
    padding: 14px 24px 16px;
  }
  @media (max-width: 720px) {
    header,
    li,
    footer,
    .none,
    .taken,
    p.bad {
      padding-inline: 14px;
    }
    .acts .plain {
      padding-inline: 0;
    }
  }
`;
