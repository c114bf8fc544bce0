import { css } from 'lit';

/** Slips of paper in the panel, their sections and lists. */
export const panelStyles = css`
  .slip {
    background: var(--sheet);
    border: 1px solid var(--rule-2);
    border-top: 3px solid var(--ink);
    border-radius: var(--r-2);
    box-shadow: var(--lift);
    min-width: 0;
  }
  .slip > header {
    padding: 10px 16px;
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: start;
    column-gap: 10px;
  }
  .slip h2 {
    font: 600 var(--t-6) / 1.15 var(--face-sign);
    overflow-wrap: anywhere;
  }
  .slip h2.small {
    font-size: var(--t-5);
  }
  .where {
    color: var(--ink-2);
    font-size: var(--t-2);
    margin-top: 2px;
  }
  section {
    padding: 11px 16px 13px;
    border-top: 1px solid var(--rule);
    min-width: 0;
  }
  section:first-child {
    border-top: 1px solid var(--rule);
  }
  h3 {
    font: 600 var(--t-3) / 1.3 var(--face-sign);
    color: var(--ink-2);
    margin-bottom: 7px;
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: 8px;
  }
  h3 small {
    font: 400 var(--t-2) / 1.2 var(--face-read);
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
  }
  .head-acts {
    display: flex;
    align-items: center;
    gap: 14px;
    margin: -2px -7px 0 0;
  }
  .fold {
    display: none;
  }
  .big-figure {
    font: 600 var(--t-7) / 1.15 var(--face-sign);
    font-feature-settings: 'tnum';
    overflow-wrap: anywhere;
  }
  .big-figure.by-hand {
    color: var(--pen);
  }
  .big-figure small {
    font: 400 var(--t-3) / 1 var(--face-read);
    color: var(--ink-2);
  }
  .list {
    display: grid;
  }
  .list li {
    display: flex;
    justify-content: space-between;
    align-items: baseline;
    gap: 10px;
    padding: 3px 0;
    border-top: 1px solid var(--rule);
    min-height: 28px;
  }
  .list li:first-child {
    border-top: 0;
  }
  .list li > span:last-child {
    color: var(--ink-2);
    font-size: var(--t-3);
    text-align: right;
    font-variant-numeric: tabular-nums;
    overflow-wrap: anywhere;
  }
  .go {
    all: unset;
    cursor: pointer;
    line-height: 24px;
    text-decoration: underline;
    text-decoration-color: var(--rule-3);
    text-underline-offset: 3px;
    min-width: 0;
  }
  .go:hover {
    text-decoration-color: currentColor;
  }
  .go:focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: 2px;
  }
  .two {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 16px;
  }
  .two > div {
    min-width: 0;
  }
  .subst {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 2px 8px;
    margin-top: 8px;
    font-size: var(--t-3);
    color: var(--ink);
    align-items: baseline;
  }
  .subst .fx {
    font-size: var(--t-4b);
  }
  .handnote {
    font: italic 400 var(--t-4b) / 1.45 var(--face-ink);
    color: var(--ink);
    overflow-wrap: anywhere;
    white-space: pre-wrap;
  }
  .handnote.none {
    color: var(--ink-3);
  }
  .source {
    display: block;
    width: 100%;
    padding: 6px 8px;
    border: 0;
    border-radius: var(--r-1);
    background: var(--pen-wash);
    box-shadow: 0 0 0 2px var(--pen);
    outline: none;
    color: var(--pen);
    font: italic 400 var(--t-4b) / 1.45 var(--face-ink);
    resize: vertical;
    field-sizing: content;
    min-height: 72px;
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    align-items: center;
    margin-top: 10px;
  }
  .caution {
    border-top: 1px solid var(--rule-2);
  }
  @media (max-width: 720px) {
    .go,
    .list li {
      min-height: var(--touch);
      line-height: 38px;
    }
  }
`;
