import { css } from 'lit';

export const frontierStyles = css`
  :host {
    container-type: inline-size;
  }
  /* What is drawn is said beside it where there is room. */
  @container (min-width: 61.4em) {
    .drawing {
      display: grid;
      grid-template-columns: minmax(0, 720px) minmax(0, 1fr);
      gap: 24px;
      align-items: center;
    }
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 14px;
    align-items: center;
    margin-bottom: 8px;
  }
  /* room for what it says once the points are there, so that the page stays where it is */
  .words {
    min-height: 2.8em;
    padding-bottom: 6px;
    color: var(--ink-2);
    max-width: 96ch;
    line-height: 1.4;
  }
  .bar .busy {
    font: 600 var(--t-2) / 1.2 var(--face-sign);
  }
  .bar .stale {
    color: var(--ink-2);
    font-size: var(--t-2);
  }
  .bar .seg {
    margin-left: auto;
  }
  svg.plot {
    width: 100%;
    max-width: 720px;
    height: auto;
    overflow: visible;
    font: 400 var(--t-1) / 1 var(--face-read);
  }
  .plot text {
    fill: var(--ink-2);
    font-size: 12px;
  }
  .plot .name {
    font-family: var(--face-sign);
    font-weight: 500;
  }
  .plot .grid {
    stroke: var(--rule);
  }
  .plot .axis {
    stroke: var(--ink-2);
  }
  .plot .line {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  .plot .budget {
    stroke: var(--pen);
    stroke-dasharray: 5 4;
  }
  .plot .pen {
    fill: var(--pen);
  }
  .plot .point {
    cursor: pointer;
  }
  .plot .point .dot {
    fill: var(--sheet);
    stroke: var(--ink);
    stroke-width: 2;
  }
  .plot .point .reach {
    fill: transparent;
    stroke: none;
  }
  .plot .point:hover .dot,
  .plot .point:focus-visible .dot {
    fill: var(--pen);
    stroke: var(--pen);
  }
  .plot .point:focus-visible {
    outline: none;
  }
  .plot .point:focus-visible .ring {
    stroke: var(--pen);
  }
  .plot .ring {
    fill: none;
    stroke: transparent;
    stroke-width: 2;
  }
  .plot .short .dot {
    stroke: var(--fault);
    stroke-dasharray: 3 2;
  }
  .plot .today {
    fill: var(--ink);
  }
  .old {
    opacity: 0.8;
  }
  details {
    margin-top: 6px;
  }
  summary {
    cursor: pointer;
    font: 600 var(--t-2) / 1.6 var(--face-sign);
  }
  .hint {
    color: var(--ink-2);
    font-size: var(--t-2);
    line-height: 1.4;
  }
  @media (max-width: 720px) {
    .words {
      min-height: 7em;
    }
    /* The drawing is a good half as wide as it was laid out: this is 12 px and more on a phone. */
    .plot text {
      font-size: 24px;
    }
    summary {
      min-height: var(--touch);
      line-height: var(--touch);
    }
  }
`;
