import { css } from 'lit';

export const headBarStyles = css`
  :host {
    display: block;
  }
  .bar {
    display: flex;
    align-items: center;
    gap: var(--s-5);
    min-height: 52px;
    padding: 0 24px 0 0;
    background: var(--asphalt);
    color: var(--on-asphalt);
  }
  .bar :focus-visible {
    outline-color: var(--on-asphalt);
  }
  .brand {
    display: flex;
    align-items: center;
    font: 700 var(--t-5) / 1 var(--face-sign);
    letter-spacing: 0.005em;
  }
  .brand svg {
    width: 30px;
    height: 30px;
    margin: 0 21px;
  }
  .title {
    display: flex;
    align-items: baseline;
    gap: 10px;
    min-width: 0;
    padding-left: var(--s-5);
    border-left: 1px solid var(--asphalt-2);
  }
  h1 {
    min-width: 0;
    font: 600 var(--t-4) / 1.2 var(--face-sign);
  }
  .title input {
    all: unset;
    box-sizing: border-box;
    field-sizing: content;
    min-width: 6ch;
    max-width: 100%;
    padding: 3px 0 2px;
    border-bottom: 1px solid transparent;
    text-overflow: ellipsis;
    cursor: text;
  }
  .title input:hover {
    border-bottom-color: var(--on-asphalt-2);
  }
  .title input:focus-visible {
    outline: 2px solid var(--on-asphalt);
    outline-offset: 3px;
  }
  .title input.gist {
    font: 400 var(--t-2) / 1.2 var(--face-read);
    color: var(--on-asphalt-2);
  }
  .right {
    margin-left: auto;
    display: flex;
    align-items: center;
    gap: 10px;
  }
  .kept {
    font-size: var(--t-2);
    color: var(--on-asphalt-2);
    /* As wide as its longest words, so that the buttons beside it stay where they are. */
    min-width: 14em;
    margin-right: 10px;
    white-space: nowrap;
  }
  .btn {
    background: transparent;
    border-color: var(--on-asphalt-2);
    color: var(--on-asphalt);
  }
  .btn:hover {
    background: var(--asphalt-2);
  }
  .btn[disabled] {
    background: transparent;
    border-color: var(--asphalt-2);
    color: var(--on-asphalt-2);
  }
  .light {
    display: inline-flex;
    border: 1px solid var(--on-asphalt-2);
    border-radius: var(--r-2);
    overflow: hidden;
  }
  .light button {
    min-height: 28px;
    padding: 0 11px;
    border: 0;
    background: none;
    color: var(--on-asphalt);
    font: 600 var(--t-2) / 1 var(--face-sign);
    cursor: pointer;
  }
  .light button[aria-pressed='true'] {
    background: var(--on-asphalt);
    color: var(--asphalt);
  }
  .light button:focus-visible {
    outline-offset: -3px;
  }
  .light button[aria-pressed='true']:focus-visible {
    outline-color: var(--asphalt);
  }
  .holder {
    position: relative;
  }
  .menu {
    position: absolute;
    right: 0;
    top: calc(100% + 6px);
    z-index: 60;
  }
  .menu :focus-visible {
    outline-color: var(--pen);
  }
  .menu .light {
    display: none;
    margin: 6px 4px 4px;
    border-color: var(--rule-3);
  }
  .menu .light button {
    flex: 1;
    text-align: center;
    color: var(--ink);
  }
  .menu .light button[aria-pressed='true'] {
    background: var(--ink);
    color: var(--sheet);
  }
  .kept-note {
    display: none;
    padding: 4px 10px 6px;
    color: var(--ink-2);
    font: 400 var(--t-2) / 1.3 var(--face-read);
  }
  .failed {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 12px;
    padding: 9px 24px;
    background: var(--fault-wash);
    color: var(--ink);
    border-bottom: 1px solid var(--fault);
    font-size: var(--t-3);
  }
  .failed > svg {
    width: 16px;
    height: 16px;
    color: var(--fault);
    flex: none;
  }
  .failed b {
    color: var(--fault);
    font-family: var(--face-sign);
  }
  .failed .btn {
    background: var(--sheet);
    color: var(--ink);
    border-color: var(--rule-3);
  }
  .failed .says {
    flex: 1 1 260px;
  }
  @media (max-width: 86.25em) {
    .title input.gist {
      display: none;
    }
  }
  @media (max-width: 62.5em) {
    .kept {
      display: none;
    }
    .kept-note {
      display: block;
    }
  }
  @media (max-width: 720px) {
    .bar {
      min-height: 48px;
      padding: 0 8px 0 0;
      gap: 8px;
    }
    .brand svg {
      margin: 0 4px 0 1px;
      width: 26px;
      height: 26px;
    }
    .brand span,
    .wide {
      display: none;
    }
    .title {
      flex: 1;
      padding: 0;
      border: 0;
    }
    .title input {
      min-height: var(--touch);
      font-size: var(--t-4b);
    }
    .light {
      display: none;
    }
    .menu .light {
      display: flex;
    }
    .menu .light button {
      min-height: var(--touch);
    }
    .failed {
      padding: 9px 12px;
    }
  }
`;
