import { css } from 'lit';

export const figureFieldStyles = css`
  :host {
    display: block;
    position: relative;
    min-width: 0;
  }
  .line {
    display: flex;
    align-items: baseline;
    gap: 6px;
    min-width: 0;
  }
  input,
  select {
    all: unset;
    flex: 1;
    min-width: 0;
    width: 3ch;
    box-sizing: border-box;
    color: var(--pen);
    font-variant-numeric: lining-nums tabular-nums;
    cursor: text;
  }
  /* the line around them carries the ring */
  input:focus-visible,
  select:focus-visible {
    outline: none;
  }
  input::placeholder {
    color: var(--ink-3);
    font-weight: 400;
  }
  select {
    cursor: pointer;
    text-overflow: ellipsis;
    overflow: hidden;
    white-space: nowrap;
  }
  select option {
    color: var(--ink);
    background: var(--sheet);
  }
  .unit {
    color: var(--ink-2);
    font: 400 var(--t-2) / 1.2 var(--face-read);
    white-space: nowrap;
  }
  .was {
    color: var(--ink-3);
    text-decoration: line-through;
    font-size: var(--t-3);
    margin-right: auto;
    white-space: nowrap;
  }

  /* on a form: a blank on its ruled line */
  :host([size='blank']) .line {
    border-bottom: 1px solid var(--pen-rule);
    padding: 1px 0 2px;
    margin-top: 1px;
  }
  :host([size='blank']) input,
  :host([size='blank']) select {
    font: 600 var(--t-6) / 1.15 var(--face-sign);
    font-feature-settings: 'tnum';
  }
  :host([size='blank']) .line:hover {
    background: var(--pen-wash);
  }
  :host([size='blank']) .line:has(.was) input {
    flex: 0 1 auto;
    width: 6ch;
  }
  :host([size='blank']) input.text,
  :host([size='blank']) select {
    font-size: var(--t-5);
    line-height: 1.33;
  }
  :host([size='blank']) .line:focus-within {
    background: var(--pen-wash);
    border-bottom-color: transparent;
    box-shadow:
      0 0 0 2px var(--pen-wash),
      0 0 0 4px var(--pen);
    border-radius: var(--r-1);
  }

  /* in the panel: a small blank */
  :host([size='line']) .line {
    border-bottom: 1px solid var(--pen-rule);
    padding: 2px 0;
  }
  :host([size='line']) input,
  :host([size='line']) select {
    font: 400 var(--t-3) / 1.4 var(--face-read);
  }
  :host([size='line']) .line:hover {
    background: var(--pen-wash);
  }
  :host([size='line']) .line:focus-within {
    background: var(--pen-wash);
    border-bottom-color: transparent;
    box-shadow: 0 0 0 2px var(--pen);
    border-radius: var(--r-1);
  }

  /* in a table: fills the cell */
  :host([size='cell']) .line {
    height: 100%;
    min-height: calc(var(--row) - 1px);
    align-items: center;
    padding: 0 6px;
    background: var(--pen-wash);
    box-shadow: inset 0 0 0 2px var(--pen);
    border-radius: var(--r-1);
  }
  :host([size='cell'][align='right']) input {
    text-align: right;
  }

  .line.bad {
    border-bottom: 2px solid var(--fault) !important;
  }
  .line.bad input,
  .line.bad select {
    color: var(--fault);
  }
  .refusal {
    margin-top: 3px;
    font: 500 var(--t-2) / 1.35 var(--face-read);
    color: var(--fault);
    overflow-wrap: anywhere;
  }
  .refusal span {
    color: var(--ink-2);
    font-weight: 400;
  }
  :host([size='cell']) .refusal {
    position: fixed;
    left: var(--refusal-x, 0);
    top: var(--refusal-y, 0);
    z-index: 40;
    max-width: min(320px, calc(100vw - 24px));
    padding: 7px 10px 8px;
    background: var(--fault-wash);
    border: 1px solid var(--fault);
    border-radius: var(--r-2);
    box-shadow: var(--lift-2);
    text-align: left;
  }
  @media (max-width: 720px) {
    :host(:not([size='cell'])) input,
    :host(:not([size='cell'])) select {
      min-height: var(--touch);
    }
  }
`;
