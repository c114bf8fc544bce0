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

  /* map */
  /* no grid: to find how narrow 2,400 cells may be takes longer than to lay them out */
  .scroll {
    display: block;
    container-type: normal;
    margin: 0 -16px;
    padding-bottom: 4px;
  }
  .scroll::after {
    display: none;
  }
  /* separate borders: the browser lays 2,400 cells out in half the time */
  .heat {
    table-layout: fixed;
    border-collapse: separate;
    border-spacing: 2px;
    width: 100%;
    min-width: 54rem;
  }
  .heat th,
  .heat td {
    padding: 0;
    height: 27px;
    border: 0;
  }
  .heat tbody tr:hover > * {
    background-color: transparent;
  }
  .heat tbody th {
    position: sticky;
    left: 0;
    z-index: 1;
    padding: 0 8px 0 16px;
    background: var(--sheet);
    white-space: normal;
    line-height: 1.1;
  }
  .heat tr.lit th {
    font-weight: 700;
    box-shadow: inset 4px 0 0 var(--ink);
  }
  .heat td.h {
    text-align: center;
    font-size: var(--t-1);
    color: var(--h-ink);
    cursor: pointer;
  }
  .heat td.h:hover {
    outline: 2px solid var(--pen);
    outline-offset: -2px;
  }
  .heat td.h,
  .heat tbody tr:hover > td.h {
    background: var(--sheet-2);
  }
  .heat td.h:not([data-h]) {
    color: var(--ink-3);
  }
  [data-h='1'],
  .heat tbody tr > td[data-h='1'],
  .heat tbody tr:hover > td[data-h='1'] {
    background: var(--h-1);
  }
  [data-h='2'],
  .heat tbody tr > td[data-h='2'],
  .heat tbody tr:hover > td[data-h='2'] {
    background: var(--h-2);
  }
  [data-h='3'],
  .heat tbody tr > td[data-h='3'],
  .heat tbody tr:hover > td[data-h='3'] {
    background: var(--h-3);
  }
  .heat td[data-h='4'],
  .heat td[data-h='5'] {
    color: var(--h-ink-2);
    font-weight: 600;
  }
  [data-h='4'],
  .heat tbody tr > td[data-h='4'],
  .heat tbody tr:hover > td[data-h='4'] {
    background: var(--h-4);
  }
  [data-h='5'],
  .heat tbody tr > td[data-h='5'],
  .heat tbody tr:hover > td[data-h='5'] {
    background: var(--h-5);
  }
  .heat td.peak {
    outline: 2px solid var(--ink);
    outline-offset: -3px;
  }
  .heat thead th {
    background: none;
    border: 0;
    padding: 4px 0 4px;
    vertical-align: bottom;
    color: var(--ink-2);
  }
  .heat thead th:first-child {
    padding-left: 16px;
  }
  .heat thead th.leg {
    height: 6.6rem;
    border-left: 1px solid var(--rule-2);
  }
  .heat thead th.leg span {
    display: block;
    padding-left: 2px;
    white-space: nowrap;
    writing-mode: vertical-rl;
    transform: rotate(180deg);
    font: 500 var(--t-1) / 1.1 var(--face-sign);
  }
  .heat .tot {
    text-align: right;
    padding-right: 10px;
    font-weight: 500;
  }
  .heat tr.help td {
    vertical-align: bottom;
    height: 34px;
  }
  .heat tr.help i {
    display: block;
    background: var(--sheet-3);
    border-top: 2px solid var(--ink-2);
  }
  .heat tr.help th {
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
    vertical-align: bottom;
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
    .heat {
      min-width: 48rem;
    }
    .heat tbody th,
    .heat thead th:first-child {
      padding-left: 12px;
      font-size: var(--t-2);
    }
  }
  @media print {
    details.figures,
    .more {
      display: none;
    }
  }
`;
