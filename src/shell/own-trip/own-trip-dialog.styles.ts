import { css } from 'lit';
import { dialogStyles } from '../dialog.styles.ts';

export const ownTripDialogStyles = [
  dialogStyles,
  css`
  dialog {
    width: min(860px, calc(100vw - 24px));
    height: min(820px, calc(100dvh - 24px));
    max-height: none;
  }
  dialog[open] {
    display: grid;
    grid-template-rows: auto auto minmax(0, 1fr) auto;
  }
  header {
    padding: 10px 14px 6px 24px;
  }
  nav {
    border-bottom: 1px solid var(--ink-2);
  }
  nav ol {
    display: flex;
    flex-wrap: wrap;
    padding: 0 14px;
  }
  nav button {
    min-height: 36px;
    padding: 0 10px 3px;
    border: 0;
    border-bottom: 3px solid transparent;
    background: none;
    font: 500 var(--t-3) / 1.2 var(--face-sign);
    cursor: pointer;
  }
  nav button:hover {
    background: var(--sheet-3);
  }
  nav button[aria-current='step'] {
    border-bottom-color: var(--ink);
    font-weight: 600;
  }
  .step-name {
    font-style: normal;
  }
  nav span,
  .count {
    color: var(--ink-2);
    font-weight: 400;
  }
  .step {
    padding: 16px 24px 24px;
    overflow-y: auto;
    overscroll-behavior: contain;
  }
  h3 {
    font: 600 var(--t-5b, var(--t-5)) / 1.2 var(--face-sign);
  }
  h4 {
    margin-top: 18px;
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
  }
  .gist {
    max-width: 64ch;
    margin: 4px 0 14px;
    color: var(--ink-2);
    line-height: 1.45;
  }
  fieldset {
    position: relative;
    margin-top: 18px;
    border-top: 1px solid var(--rule-2);
  }
  legend {
    padding: 0 8px 0 0;
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
  }
  .all {
    position: absolute;
    right: 0;
    /* on the line that the legend stands on */
    top: calc(-0.65 * var(--t-4b) - var(--hit) / 2);
    padding-left: 10px;
    background: var(--sheet);
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(228px, 100%), 1fr));
    gap: 14px 24px;
    padding-top: 8px;
  }
  .field {
    display: block;
    min-width: 0;
  }
  .label {
    display: block;
    padding-bottom: 4px;
    font: 500 var(--t-3) / 1.3 var(--face-sign);
    color: var(--ink-2);
  }
  .hint {
    font-size: var(--t-2);
    line-height: 1.35;
    color: var(--ink-2);
  }
  .written {
    width: 100%;
    min-height: 28px;
    padding: 2px 0;
    border: 0;
    border-bottom: 1px solid var(--pen-rule);
    border-radius: 0;
    background: none;
    color: var(--pen);
  }
  .written:hover,
  .written:focus {
    background: var(--pen-wash);
  }
  .parts li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 2px 8px;
    padding: 4px 0;
    border-bottom: 1px solid var(--rule);
  }
  .parts .tick {
    max-width: calc(100% - 24px);
  }
  .tick {
    display: inline-flex;
    align-items: center;
    gap: 8px;
    min-height: 28px;
    cursor: pointer;
  }
  .tick input {
    flex: none;
    width: 18px;
    height: 18px;
    margin: 0;
    accent-color: var(--pen);
  }
  .safe {
    width: 14px;
    height: 13px;
  }
  .now {
    flex-basis: 100%;
    display: grid;
    grid-template-columns: 180px minmax(0, 1fr);
    gap: 4px 16px;
    align-items: baseline;
    padding: 0 0 6px 26px;
  }
  .now > .hint:only-child {
    grid-column: 1 / -1;
  }
  .bring {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 12px;
    align-items: center;
    margin-top: 14px;
  }
  .brought,
  .ticks {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 16px;
    align-items: center;
    margin-top: 12px;
  }
  .suppliers li,
  .left li {
    padding: 7px 0;
    border-bottom: 1px solid var(--rule);
    line-height: 1.4;
    overflow-wrap: anywhere;
  }
  .said div {
    display: flex;
    justify-content: space-between;
    gap: 16px;
    padding: 7px 0;
    border-bottom: 1px solid var(--rule);
  }
  .said dt {
    color: var(--ink-2);
  }
  .said dd {
    font-weight: 600;
    text-align: right;
    overflow-wrap: anywhere;
  }
  .bad {
    display: flex;
    gap: 8px;
    align-items: center;
    margin-top: 12px;
    color: var(--fault);
    font-weight: 500;
  }
  footer {
    display: flex;
    justify-content: flex-end;
    gap: 10px;
    padding: 12px 24px 14px;
    border-top: 1px solid var(--rule-2);
  }
  .again {
    margin-right: auto;
  }
  @media (max-width: 720px) {
    header,
    .step,
    footer {
      padding-inline: 14px;
    }
    nav ol {
      padding: 0 4px;
    }
    nav button {
      min-height: var(--touch);
      padding-inline: 8px;
    }
    nav span {
      display: none;
    }
    /* Five steps in one line: the others by their numbers, their names for screen readers. */
    nav ol {
      flex-wrap: nowrap;
    }
    nav li:has([aria-current='step']) {
      margin-right: auto;
    }
    nav button {
      min-width: var(--touch);
    }
    nav button:not([aria-current='step']) .step-name {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .tick {
      min-height: var(--touch);
    }
    .now {
      grid-template-columns: minmax(0, 1fr);
    }
    .written {
      min-height: 34px;
    }
  }
`,
];
