import { css } from 'lit';

/** The dialog's frame, its left side and its foot. */
export const importDialogStyles = css`
  dialog {
    width: min(1228px, calc(100vw - 48px));
    max-width: none;
    max-height: calc(100vh - 48px);
    padding: 0;
    border: 0;
    border-radius: var(--r-3);
    background: var(--sheet);
    color: var(--ink);
    box-shadow: var(--lift-2);
    overflow: hidden;
  }
  /* Before there is a file it asks for one, and takes no more room than that. */
  dialog:has(.ask-file) {
    width: min(640px, calc(100vw - 48px));
  }
  dialog::backdrop {
    background: var(--scrim);
  }
  dialog.over {
    outline: 3px dashed var(--pen);
    outline-offset: -6px;
  }
  .dlg {
    display: grid;
    grid-template-rows: auto minmax(0, 1fr) auto;
    max-height: calc(100vh - 48px);
  }
  .head {
    display: flex;
    align-items: baseline;
    gap: 14px;
    padding: 16px 24px 14px;
    border-bottom: 2px solid var(--ink);
  }
  h2 {
    font: 600 var(--t-6b) / 1.2 var(--face-sign);
  }
  /* it holds the keyboard when the dialog opens, and nothing can be done to it */
  #heading:focus {
    outline: none;
  }
  .head p {
    color: var(--ink-2);
  }
  .x {
    margin-left: auto;
    align-self: center;
    display: grid;
    place-items: center;
    width: 32px;
    height: 32px;
    border: 0;
    border-radius: var(--r-2);
    background: none;
    color: var(--ink);
    cursor: pointer;
  }
  .x:hover {
    background: var(--sheet-3);
  }
  .foot {
    display: flex;
    align-items: center;
    gap: 12px;
    padding: 14px 24px;
    border-top: 1px solid var(--rule-2);
    background: var(--sheet-2);
  }
  .sum {
    margin-right: auto;
    display: flex;
    flex-wrap: wrap;
    gap: 3px 22px;
    min-width: 0;
    color: var(--ink-2);
  }
  .sum b {
    color: var(--ink);
    font: 600 var(--t-4) / 1.2 var(--face-sign);
  }
  .sum .stopped {
    color: var(--ink);
    font-weight: 500;
  }
  .foot .btn {
    flex: none;
  }
  .body {
    display: grid;
    grid-template-columns: 284px minmax(0, 1fr);
    overflow: auto;
    min-height: min(560px, 60vh);
  }
  .side {
    padding: 18px 20px 20px 24px;
    background: var(--sheet-2);
    border-right: 1px solid var(--rule-2);
  }
  .drop {
    margin-bottom: 18px;
    padding: 14px 14px 13px;
    border: 1.5px dashed var(--rule-3);
    border-radius: var(--r-2);
    background: var(--sheet);
  }
  .drop b {
    display: block;
    font: 600 var(--t-4) / 1.3 var(--face-sign);
    overflow-wrap: anywhere;
  }
  .drop span {
    display: block;
    margin-top: 2px;
    color: var(--ink-2);
    font-size: var(--t-2);
  }
  .drop .alt {
    margin-top: 9px;
    padding-top: 9px;
    border-top: 1px dashed var(--rule-2);
  }
  .field {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 3px;
    margin-bottom: 11px;
  }
  .field label {
    display: flex;
    justify-content: space-between;
    gap: 8px;
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
  }
  /* Written by hand, so blanks on ruled lines, not boxes to choose from. */
  .terms {
    grid-template-columns: auto minmax(72px, 1fr);
    align-items: end;
    gap: 4px 12px;
    margin: 0 0 14px;
    padding: 9px 0 8px;
    border: solid var(--rule-2);
    border-width: 1px 0;
  }
  .terms legend {
    grid-column: 1 / -1;
    padding: 0 8px 0 0;
    font: 600 var(--t-2) / 1.2 var(--face-sign);
  }
  .terms label {
    align-self: center;
    justify-content: start;
  }
  .terms input:not([type]) {
    border: 0;
    border-bottom: 1px solid var(--pen-rule);
    border-radius: 0;
    background: none;
    text-align: right;
    font: 600 var(--t-4) / 1.2 var(--face-sign);
  }
  .terms input:not([type]):hover {
    background: var(--pen-wash);
  }
  .terms .trouble,
  .terms .hint {
    grid-column: 1 / -1;
  }
  .terms .hint {
    margin: 4px 0 0;
  }
  .terms .trouble {
    margin: 0;
    color: var(--fault);
    font-size: var(--t-2);
  }
  .field em,
  details em {
    font-style: normal;
    font-weight: 400;
    color: var(--ink-3);
  }
  .field .line {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 6px;
  }
  .hint {
    margin: -3px 0 12px;
    font-size: var(--t-2);
    line-height: 1.4;
    color: var(--ink-2);
  }
  details > summary {
    padding: 6px 0;
    font: 600 var(--t-2) / 1.3 var(--face-sign);
    cursor: pointer;
  }
  .mainpart {
    padding: 16px 24px 20px 22px;
    min-width: 0;
  }
  input:not([type]),
  input[name] {
    min-height: 30px;
    min-width: 0;
    padding: 0 8px;
    border: 1px solid var(--rule-3);
    border-radius: var(--r-2);
    background: var(--sheet);
    color: var(--pen);
    font: 500 var(--t-3) / 1.2 var(--face-read);
  }
  input[type='radio'] {
    min-height: 0;
  }
  ::placeholder {
    color: var(--ink-3);
    opacity: 1;
  }
  .ask-file {
    display: grid;
    justify-items: start;
    gap: 12px;
    padding: 22px 24px 28px;
    max-width: 76ch;
    line-height: 1.45;
  }
  .ask-file h3 {
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
    overflow-wrap: anywhere;
  }
  .refused {
    display: grid;
    grid-template-columns: 20px minmax(0, 1fr);
    gap: 10px;
    padding: 12px 14px;
    background: var(--fault-wash);
    border-top: 3px solid var(--fault);
    overflow-wrap: anywhere;
  }
  .refused svg {
    width: 18px;
    height: 18px;
    margin-top: 2px;
    color: var(--fault);
  }
  .refused b {
    font-family: var(--face-sign);
  }
  progress {
    appearance: none;
    width: min(420px, 100%);
    height: 8px;
    border: 0;
    background: var(--sheet-3);
  }
  progress::-webkit-progress-bar {
    background: var(--sheet-3);
  }
  progress::-webkit-progress-value {
    background: var(--ink);
  }
  progress::-moz-progress-bar {
    background: var(--ink);
  }
  @media (max-width: 720px) {
    dialog,
    dialog:has(.ask-file) {
      width: 100vw;
      height: 100dvh;
      max-height: 100dvh;
      border-radius: 0;
    }
    .dlg {
      height: 100dvh;
      max-height: 100dvh;
    }
    .head {
      padding: 10px 14px;
      flex-wrap: wrap;
      gap: 0 12px;
    }
    .head p {
      order: 3;
      flex-basis: 100%;
    }
    .x {
      width: var(--touch);
      height: var(--touch);
    }
    .body {
      grid-template-columns: minmax(0, 1fr);
      min-height: 0;
    }
    .side {
      padding: 14px 14px 6px;
      border-right: 0;
      border-bottom: 1px solid var(--rule-2);
    }
    .mainpart {
      padding: 14px;
    }
    .mainpart .diff td:last-child {
      min-width: 4.6em;
      padding-right: 0;
      font-size: var(--t-2);
      line-height: 1.15;
      white-space: normal;
    }
    .ask-file {
      padding: 16px 14px;
      align-content: start;
    }
    .foot {
      display: grid;
      grid-template-columns: 1fr 1.4fr;
      padding: 10px 14px 12px;
    }
    .sum {
      grid-column: 1 / -1;
      max-height: 30vh;
      overflow: auto;
    }
    input:not([type]),
    input[name],
    details > summary {
      min-height: var(--touch);
    }
    details > summary {
      align-content: center;
    }
  }
`;
