import { css } from 'lit';

export const columnSettingsStyles = css`
  .slip {
    border-top: 1px solid var(--rule-2);
    border-bottom: 1px solid var(--rule-2);
    background: var(--sheet-2);
    padding: 9px 16px 14px;
  }
  .top {
    display: flex;
    align-items: center;
    flex-wrap: wrap;
    gap: 4px 16px;
    margin-bottom: 8px;
  }
  .top h3 {
    font: 600 var(--t-4) / 1.3 var(--face-sign);
  }
  .top h3 span {
    font-weight: 400;
    color: var(--ink-2);
  }
  .top .acts {
    margin-left: auto;
    display: flex;
    align-items: center;
    flex-wrap: wrap;
    gap: 4px 14px;
  }
  .x {
    width: var(--hit);
    height: var(--hit);
    border: 0;
    background: none;
    display: grid;
    place-items: center;
    cursor: pointer;
    color: var(--ink-2);
    margin-right: -7px;
  }
  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(172px, 1fr));
    gap: 10px 22px;
    align-items: start;
  }
  .wide sw-formula-line {
    margin-top: 5px;
  }
  .wide {
    grid-column: 1 / -1;
  }
  .label {
    display: block;
    padding-bottom: 4px;
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
  }
  input.blank {
    all: unset;
    box-sizing: border-box;
    display: block;
    width: 100%;
    min-height: 28px;
    padding: 1px 2px 2px;
    border-bottom: 1px solid var(--pen-rule);
    color: var(--pen);
    font: 500 var(--t-4) / 1.3 var(--face-read);
    cursor: text;
  }
  input.blank:hover {
    background: var(--pen-wash);
  }
  input.blank:focus-visible {
    background: var(--pen-wash);
    box-shadow: 0 0 0 2px var(--pen);
    border-bottom-color: transparent;
    border-radius: var(--r-1);
  }
  input.blank[aria-invalid='true'] {
    color: var(--fault);
    border-bottom: 2px solid var(--fault);
  }
  .mono {
    font-family: var(--face-ink) !important;
    font-style: italic;
  }
  .note {
    margin-top: 3px;
    font: 400 var(--t-2) / 1.35 var(--face-read);
    color: var(--ink-2);
  }
  .note.bad {
    color: var(--fault);
    font-weight: 500;
  }
  .pick {
    margin-top: 1px;
  }
  .tick {
    display: flex;
    align-items: center;
    gap: 8px;
    min-height: var(--hit);
    margin-top: 15px;
    font: 500 var(--t-3) / 1.3 var(--face-sign);
    cursor: pointer;
  }
  .tick input {
    width: 16px;
    height: 16px;
    margin: 0;
    accent-color: var(--ink);
  }
  .set {
    font: 400 var(--t-fx) / 1.5 var(--face-ink);
    overflow-wrap: anywhere;
  }
  .written {
    display: flex;
    align-items: baseline;
    gap: 14px;
    flex-wrap: wrap;
    padding-top: 2px;
  }
  @media (max-width: 720px) {
    .slip {
      padding-inline: 12px;
    }
    .fields {
      grid-template-columns: repeat(auto-fill, minmax(140px, 1fr));
      gap: 10px 16px;
    }
    input.blank,
    .tick {
      min-height: var(--touch);
    }
    input.blank {
      font-size: var(--t-4a);
    }
  }
`;
