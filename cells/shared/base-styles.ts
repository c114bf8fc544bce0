import { css } from 'lit';

/** What every element of the notebook starts from: the box model, plain lists and headings, the focus ring. */
export const baseStyles = css`
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  :host {
    display: block;
    font: 400 var(--t-3) / var(--lh-row) var(--face-read);
    font-variant-numeric: lining-nums tabular-nums;
    color: var(--ink);
  }
  :host([hidden]) {
    display: none;
  }
  h1,
  h2,
  h3,
  h4,
  p,
  ul,
  ol,
  dl,
  dd,
  figure,
  fieldset {
    margin: 0;
    padding: 0;
    border: 0;
  }
  ul,
  ol {
    list-style: none;
  }
  button,
  input,
  select,
  textarea {
    font: inherit;
    color: inherit;
  }
  a {
    color: inherit;
    text-underline-offset: 3px;
    text-decoration-thickness: 1px;
  }
  svg {
    display: block;
  }
  .sr {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  .num {
    text-align: right;
  }
  .quiet {
    color: var(--ink-3);
  }
  :focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: 2px;
    border-radius: var(--r-1);
  }
`;
