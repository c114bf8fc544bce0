import { css } from 'lit';

export const lensLineStyles = css`
  :host {
    display: block;
    border-top: 1px solid var(--rule);
    background: var(--sheet-2);
  }
  form {
    display: grid;
    gap: 8px 18px;
    padding: 10px 16px 12px;
  }
  .line {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 6px 12px;
  }
  .field {
    display: grid;
    gap: 2px;
    min-width: 0;
  }
  .label {
    font: 500 var(--t-2) / 1.3 var(--face-sign);
    color: var(--ink-2);
  }
  input {
    width: min(22ch, 100%);
    min-height: 32px;
    padding: 0 8px;
    border: 1px solid var(--rule-3);
    border-radius: var(--r-2);
    background: var(--sheet);
    color: var(--pen);
    font: 500 var(--t-3) / 1.2 var(--face-read);
  }
  input[aria-invalid='true'] {
    border-color: var(--fault);
    border-bottom-width: 2px;
  }
  .pick select {
    width: auto;
    max-width: 26ch;
  }
  .says {
    font-size: var(--t-2);
    color: var(--ink-2);
  }
  .says.bad {
    color: var(--fault);
    font-weight: 500;
  }
  .end {
    margin-left: auto;
  }
  @media (max-width: 720px) {
    form {
      padding-inline: 12px;
    }
    input {
      min-height: var(--touch);
      width: 100%;
    }
    .field {
      flex: 1 1 130px;
    }
    .pick select {
      width: 100%;
    }
  }
`;
