import { css } from 'lit';

export const formulaLineStyles = css`
  :host {
    display: block;
    min-width: 0;
  }
  .paper {
    position: relative;
    background: var(--pen-wash);
    border-radius: var(--r-1);
    box-shadow: 0 0 0 2px var(--pen);
  }
  .mirror,
  textarea {
    display: block;
    width: 100%;
    margin: 0;
    padding: 7px 10px 8px;
    border: 0;
    font: 400 var(--t-4) / 1.5 var(--face-raw);
    letter-spacing: 0;
    white-space: pre-wrap;
    overflow-wrap: anywhere;
    tab-size: 2;
  }
  .mirror {
    position: absolute;
    inset: 0;
    color: transparent;
    pointer-events: none;
    overflow: hidden;
  }
  .mirror mark {
    color: transparent;
    background: none;
    text-decoration: underline wavy 1.5px var(--fault);
    text-underline-offset: 4px;
    text-decoration-skip-ink: none;
  }
  textarea {
    position: relative;
    background: none;
    color: var(--pen);
    outline: none;
    resize: none;
    overflow: hidden;
    field-sizing: content;
    min-height: 40px;
  }
  .call {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 12px;
    padding: 7px 2px 0;
    font-size: var(--t-2);
    line-height: 1.4;
    color: var(--ink-2);
  }
  .call code {
    font: 400 var(--t-2) / 1.4 var(--face-raw);
  }
  .call .now {
    color: var(--ink);
    font-weight: 700;
    text-decoration: underline;
    text-underline-offset: 3px;
  }
  .call b {
    color: var(--ink);
  }
  .outcome {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 4px 12px;
    padding: 9px 2px 2px;
    font-size: var(--t-3);
    color: var(--ink-2);
  }
  .outcome .says {
    flex: 1 1 220px;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .outcome .would {
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
    color: var(--ink);
  }
  .outcome .bad {
    color: var(--fault);
    font-weight: 500;
  }
  .outcome .bad svg {
    display: inline-block;
    width: 13px;
    height: 13px;
    vertical-align: -2px;
    margin-right: 5px;
  }
  .acts {
    display: flex;
    gap: 8px;
    align-items: center;
    margin-left: auto;
  }
`;
