import { css } from 'lit';

export const pictureCellStyles = css`
  figure {
    padding: 0 16px 8px;
  }
  .words {
    padding-bottom: 6px;
    color: var(--ink-2);
    max-width: 96ch;
    line-height: 1.4;
  }
  /* room for all that it may come to say, so that the page stays where it is */
  .words.two {
    min-height: calc(2.8em + 6px);
  }
  .plot {
    min-height: var(--height, 0);
  }
  .plot:focus-visible {
    outline-offset: 4px;
  }
  .unit {
    color: var(--ink-2);
    font-size: var(--t-2);
    text-align: right;
  }
  /* room for two lines, so that the page stays where it is while the pointer moves */
  .readout {
    min-height: 2.7em;
    padding-top: 6px;
    line-height: 1.35;
    font-size: var(--t-3);
    color: var(--ink);
    font-variant-numeric: tabular-nums;
  }
  .key {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 16px;
    padding-top: 2px;
    font-size: var(--t-1);
    color: var(--ink-2);
  }
  .key i {
    display: inline-block;
    width: 20px;
    height: 12px;
    margin-right: 5px;
    vertical-align: -1px;
    border: 1px solid var(--rule-3);
  }
  .key i.peak {
    border: 2px solid var(--ink);
  }

  /* what the drawing library would put into each drawing */
  .drawn {
    display: block;
    max-width: 100%;
    overflow: visible;
    color: var(--ink);
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    font-variant-numeric: lining-nums tabular-nums;
    --plot-background: var(--sheet);
  }
  .drawn text,
  .drawn tspan {
    white-space: pre;
    font-size: var(--t-2);
  }
  .pointer line {
    stroke: var(--ink);
    stroke-width: 1;
  }
  .pointer circle {
    fill: var(--sheet);
    stroke: var(--ink);
    stroke-width: 2;
  }

  .scroll {
    margin: 0 -16px;
  }

  /* map */
  #map {
    padding-bottom: 4px;
  }
  .heat {
    display: flex;
    align-items: flex-start;
    width: max-content;
    min-width: 100%;
  }
  .names {
    position: sticky;
    left: 0;
    z-index: 1;
    flex: none;
    width: var(--names, 10.6rem);
    background: var(--sheet);
  }
  .names p {
    display: flex;
    align-items: center;
    height: 1.8125rem;
    padding: 0 8px 2px 16px;
    line-height: 1.1;
    font-weight: 500;
  }
  .names .corner {
    align-items: flex-end;
    height: 6.75rem;
    padding-bottom: 6px;
  }
  .names .far {
    align-items: flex-end;
    height: 2.25rem;
    padding-bottom: 5px;
  }
  .names .corner,
  .names .far {
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
  }
  .names .lit {
    font-weight: 700;
    box-shadow: inset 4px 0 0 var(--ink);
  }
  .map {
    flex: none;
    color: var(--ink);
    cursor: pointer;
    font: 400 var(--t-1) / 1 var(--face-read);
    font-variant-numeric: lining-nums tabular-nums;
    text-anchor: middle;
    text-rendering: geometricPrecision;
  }
  .map text {
    fill: currentColor;
  }
  .map .heads {
    color: var(--ink-2);
    font: 500 var(--t-1) / 1 var(--face-sign);
    text-anchor: start;
  }
  .map .lines {
    stroke: var(--rule-2);
  }
  .map .help {
    fill: var(--sheet-3);
    stroke: var(--ink-2);
    stroke-width: 1;
  }
  .map .total {
    text-anchor: end;
    font-size: var(--t-3);
    font-weight: 500;
  }
  .map .heads .total {
    font-size: var(--t-2);
  }
  .map .heads .unit {
    color: var(--ink-3);
    font-weight: 400;
  }
  .map .digits {
    fill: none;
    stroke: currentColor;
    stroke-width: 1.2;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  /* A drawing paints no background: it says on which shades its figures stand, for who measures their contrast. */
  .map .on-none {
    color: var(--ink-3);
    background-color: var(--sheet-2);
  }
  .map .on-light {
    color: var(--h-ink);
    background-image: linear-gradient(var(--h-1), var(--h-2), var(--h-3));
  }
  .map .on-dark {
    color: var(--h-ink-2);
    background-image: linear-gradient(var(--h-4), var(--h-5));
    stroke-width: 1.35;
  }
  .map .peak,
  .map .ring {
    fill: none;
    stroke: var(--ink);
    stroke-width: 2;
  }
  .map .ring {
    stroke: var(--pen);
    stroke-width: 3;
  }
  [data-h='0'] {
    fill: var(--sheet-2);
  }
  [data-h='1'] {
    fill: var(--h-1);
    background: var(--h-1);
  }
  [data-h='2'] {
    fill: var(--h-2);
    background: var(--h-2);
  }
  [data-h='3'] {
    fill: var(--h-3);
    background: var(--h-3);
  }
  [data-h='4'] {
    fill: var(--h-4);
    background: var(--h-4);
  }
  [data-h='5'] {
    fill: var(--h-5);
    background: var(--h-5);
  }
  #figures th:first-child {
    position: sticky;
    left: 0;
    z-index: 1;
    min-width: 10rem;
    background: var(--sheet);
    white-space: normal;
  }
  #figures thead th:first-child {
    background: var(--sheet-2);
  }
  #figures td .u {
    display: block;
    color: var(--ink-3);
    font-size: var(--t-1);
    line-height: 1.2;
  }
  #figures td:has(.u) {
    padding-block: 3px;
    line-height: 1.2;
  }

  /* bars by row */
  .rows td.bar {
    min-width: 92px;
    cursor: pointer;
    line-height: 1.2;
  }
  td.bar i {
    display: block;
    height: 3px;
    margin: 1px 0 0 auto;
    width: var(--share, 0);
    background: var(--ink-2);
  }
  details.figures {
    border-top: 1px solid var(--rule-2);
    padding: 0 16px;
  }
  details.figures > summary {
    padding: 8px 0;
    font: 600 var(--t-2) / 1.4 var(--face-sign);
    color: var(--ink-2);
    cursor: pointer;
  }
  .tall {
    max-height: 320px;
    overflow-y: auto;
  }
  tr.lit > * {
    background: var(--sheet-3);
    box-shadow: inset 0 -2px 0 var(--ink);
  }
  /* readings taken: the band is the middle third of each strip */
  .taken th.strip,
  .taken td.strip {
    width: 22%;
    min-width: 120px;
  }
  .track {
    position: relative;
    display: block;
    height: 18px;
    border-bottom: 1px solid var(--rule-3);
  }
  .track::before {
    content: '';
    position: absolute;
    inset: 2px 33.3%;
    border: 1px solid var(--ink-2);
    background: var(--sheet-3);
  }
  .track b,
  .track i {
    position: absolute;
    left: var(--at);
    translate: -50% 0;
  }
  .track b {
    top: 2px;
    bottom: 2px;
    width: 2px;
    background: var(--ink);
  }
  .track i {
    top: 2px;
    width: 10px;
    height: 10px;
    border: 2px solid var(--sheet);
    border-radius: 50%;
    background: var(--pen);
    box-sizing: content-box;
  }
  .track i.out {
    border-radius: 0;
    rotate: 45deg;
    background: var(--fault);
  }

  @media (max-width: 720px) {
    details.figures > summary {
      padding-block: calc((var(--touch) - 1.4 * var(--t-2)) / 2);
    }
    figure,
    details.figures {
      padding-inline: 12px;
    }
    .scroll {
      margin-inline: -12px;
    }
    .words.two {
      min-height: calc(7em + 6px);
    }
    .names p {
      padding-left: 12px;
      font-size: var(--t-2);
    }
  }
  @media print {
    details.figures,
    .more {
      display: none;
    }
    figure {
      break-inside: avoid;
    }
    .key i {
      print-color-adjust: exact;
    }
  }
`;
