import { css } from 'lit';

/**
 * Buttons and small controls. `.btn` a boxed button (`solid` the main one, `slim` in rows, `fix` mends a
 * fault), `.plain` an underlined word, `.seg` two or three that exclude each other, `.menu` plain actions in
 * a box, `.pick` a drop-down list.
 */
export const controlStyles = css`
  .btn {
    display: inline-flex;
    align-items: center;
    justify-content: center;
    gap: 6px;
    min-height: 32px;
    padding: 0 12px;
    border: 1px solid var(--rule-3);
    border-radius: var(--r-2);
    background: var(--sheet);
    color: var(--ink);
    font: 600 var(--t-3) / 1 var(--face-sign);
    cursor: pointer;
    white-space: nowrap;
    text-decoration: none;
    transition: background var(--quick);
  }
  .btn:hover {
    background: var(--sheet-3);
  }
  .btn.solid {
    background: var(--ink);
    border-color: var(--ink);
    color: var(--sheet);
  }
  .btn.slim {
    min-height: var(--hit);
    padding: 0 10px;
    font-size: var(--t-2);
  }
  .btn.fix {
    border-color: var(--fault);
    color: var(--fault);
    background: var(--sheet);
  }
  .btn[disabled] {
    color: var(--ink-3);
    border-color: var(--rule-2);
    background: var(--sheet-2);
    cursor: default;
  }
  .plain {
    border: 0;
    background: none;
    padding: 0 2px;
    min-height: 24px;
    font: 600 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink);
    text-decoration: underline;
    text-decoration-color: var(--rule-3);
    text-underline-offset: 4px;
    cursor: pointer;
  }
  .plain:hover {
    text-decoration-color: currentColor;
  }
  .plain[disabled] {
    color: var(--ink-3);
    text-decoration: none;
    cursor: default;
  }
  .seg {
    display: inline-flex;
    border: 1px solid var(--rule-3);
    border-radius: var(--r-2);
  }
  .seg button {
    border: 0;
    background: none;
    min-height: 26px;
    padding: 0 10px;
    font: 600 var(--t-2) / 1 var(--face-sign);
    cursor: pointer;
    color: var(--ink);
  }
  .seg button[aria-pressed='true'],
  .seg button[aria-checked='true'] {
    background: var(--ink);
    color: var(--sheet);
  }
  .pick {
    position: relative;
    display: block;
  }
  .pick select {
    appearance: none;
    width: 100%;
    min-height: 32px;
    padding: 0 28px 0 10px;
    border: 1px solid var(--rule-3);
    border-radius: var(--r-2);
    background: var(--sheet);
    color: var(--ink);
    font: 500 var(--t-3) / 1.2 var(--face-read);
    text-overflow: ellipsis;
  }
  .pick::after {
    content: '';
    position: absolute;
    right: 11px;
    top: 50%;
    width: 7px;
    height: 7px;
    margin-top: -6px;
    border: solid var(--ink-2);
    border-width: 0 1.5px 1.5px 0;
    transform: rotate(45deg);
    pointer-events: none;
  }
  .menu {
    display: grid;
    padding: 4px;
    min-width: 176px;
    background: var(--sheet);
    border: 1px solid var(--rule-2);
    border-top: 3px solid var(--ink);
    border-radius: var(--r-2);
    box-shadow: var(--lift-2);
  }
  .menu button {
    min-height: 32px;
    padding: 0 10px;
    border: 0;
    border-radius: var(--r-1);
    background: none;
    text-align: left;
    font: 500 var(--t-3) / 1.2 var(--face-sign);
    color: var(--ink);
    cursor: pointer;
  }
  .menu hr {
    width: calc(100% - 20px);
    margin: 4px 10px;
    border: 0;
    border-top: 1px solid var(--rule);
  }
  .menu button:hover {
    background: var(--sheet-3);
  }
  .menu button[disabled] {
    color: var(--ink-3);
    cursor: default;
    background: none;
  }
  @media (max-width: 720px) {
    .btn,
    .btn.slim,
    .menu button,
    .pick select,
    .seg button {
      min-height: var(--touch);
    }
    .plain {
      min-height: var(--touch);
      padding: 0 6px;
    }
  }
`;
