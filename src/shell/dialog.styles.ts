import { css } from 'lit';

/** What the dialogs of the page have in common: their box, the dimmed page behind, the head and its cross. */
export const dialogStyles = css`
  dialog {
    padding: 0;
    border: 0;
    border-top: 3px solid var(--ink);
    border-radius: var(--r-3);
    background: var(--sheet);
    color: var(--ink);
    box-shadow: var(--lift-2);
  }
  dialog::backdrop {
    background: var(--scrim);
  }
  header {
    display: flex;
    align-items: center;
    justify-content: space-between;
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
  .bad svg {
    flex: none;
    width: 13px;
    height: 13px;
  }
`;
