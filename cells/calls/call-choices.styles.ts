import { css } from 'lit';

export const callChoicesStyles = css`
  h3 {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: 8px;
    margin-bottom: 7px;
    font: 600 var(--t-3) / 1.3 var(--face-sign);
    color: var(--ink-2);
  }
  h3 span {
    font: 400 var(--t-2) / 1.2 var(--face-read);
  }
  /* from edge to edge of the panel, whose sections are set in by 16 px */
  .opts {
    display: grid;
    min-width: 0;
    margin: 0 -16px;
    border-top: 1px solid var(--rule);
  }
  .opt {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto auto;
    gap: 4px 9px;
    align-items: center;
    padding: 7px 16px 8px;
    border-top: 1px solid var(--rule);
    color: var(--ink);
  }
  .opt:first-of-type {
    border-top: 0;
  }
  label {
    display: grid;
    grid-template-columns: 18px 22px minmax(0, 1fr);
    gap: 9px;
    align-items: center;
    cursor: pointer;
  }
  .shut label {
    cursor: default;
  }
  .glyph {
    color: var(--c);
  }
  input {
    margin: 0;
    accent-color: var(--ink);
    width: 16px;
    height: 16px;
  }
  .nm {
    font: 600 var(--t-4) / 1.2 var(--face-sign);
  }
  .shut .nm {
    color: var(--ink-2);
  }
  .nm em {
    font: 600 var(--t-2) / 1 var(--face-sign);
    color: var(--c);
    margin-left: 6px;
    font-style: normal;
    white-space: nowrap;
  }
  .nm em.sentence {
    display: block;
    margin: 2px 0 0;
    line-height: 1.25;
    white-space: normal;
  }
  .nm em.byhand {
    color: var(--pen);
  }
  .eur {
    border: 0;
    padding: 2px 0;
    background: none;
    min-height: 24px;
    font: 600 var(--t-4b) / 1 var(--face-sign);
    font-feature-settings: 'tnum';
    text-align: right;
    cursor: pointer;
  }
  .eur:hover:not([disabled]) {
    text-decoration: underline;
    text-decoration-color: var(--rule-3);
    text-underline-offset: 4px;
  }
  .eur[disabled] {
    color: var(--ink-3);
    font: 400 var(--t-2) / 1.2 var(--face-read);
    cursor: default;
  }
  .shut .eur {
    color: var(--ink-2);
  }
  .strip {
    grid-column: 1 / -1;
    display: flex;
    height: 8px;
    margin-left: 58px;
    background: var(--sheet-3);
  }
  .strip b {
    width: var(--u);
    height: 100%;
  }
  .s1 {
    background: var(--ink-2);
  }
  .s2 {
    background:
      repeating-linear-gradient(90deg, var(--ink-2) 0 1px, transparent 1px 3px),
      var(--sheet);
    box-shadow: inset 0 0 0 1px var(--ink-2);
  }
  .s3 {
    background:
      repeating-linear-gradient(115deg, var(--ink-2) 0 1.5px, transparent 1.5px 4.5px),
      var(--sheet);
    box-shadow: inset 0 0 0 1px var(--ink-2);
  }
  .s4 {
    background:
      radial-gradient(circle at 2px 2px, var(--ink-2) 0 0.9px, transparent 1.2px) 0 0 / 4px 4px,
      var(--sheet);
    box-shadow: inset 0 0 0 1px var(--ink-3);
  }
  .why {
    grid-column: 1 / -1;
    margin-left: 58px;
    font-size: var(--t-2);
    line-height: 1.35;
    color: var(--ink-2);
  }
  .opt[data-on] {
    background: var(--w);
    box-shadow: inset 4px 0 0 var(--c);
  }
  .opt[data-on] .strip {
    background: var(--sheet);
  }
  .lg {
    display: flex;
    flex-wrap: wrap;
    gap: 4px 14px;
    padding-top: 8px;
    font-size: var(--t-1);
    color: var(--ink-2);
  }
  .lg span {
    display: inline-flex;
    gap: 5px;
    align-items: center;
  }
  .lg i {
    width: 16px;
    height: 8px;
    display: inline-block;
  }
  .hand-line {
    padding-top: 8px;
    font-size: var(--t-2);
    color: var(--pen);
  }
  .hand-line .plain {
    margin-left: 6px;
  }
  .forbid {
    font-size: var(--t-2);
  }
  .forbid[aria-pressed='true'] {
    color: var(--pen);
    font-weight: 600;
  }
  .forbid[aria-disabled] {
    color: var(--ink-3);
  }
  .barred-sign {
    width: 10px;
    height: 10px;
    margin-right: 3px;
  }
  .refused {
    display: flex;
    gap: 8px;
    padding-top: 8px;
    font-size: var(--t-2);
  }
  .refused svg {
    width: 13px;
    height: 13px;
    flex: none;
    color: var(--fault);
  }
  .why-call {
    margin-top: 14px;
  }
  @media (max-width: 720px) {
    .opt {
      min-height: 52px;
    }
    label {
      min-height: var(--touch);
      margin-block: -7px;
    }
    .forbid,
    .eur {
      min-width: 44px;
      min-height: var(--touch);
      margin-block: -8px;
    }
  }
`;
