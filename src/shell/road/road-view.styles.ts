import { css } from 'lit';

export const roadStyles = css`
  :host {
    display: block;
    isolation: isolate;
  }
  .road {
    position: relative;
    padding: 0 24px 0 0;
  }
  /* one unbroken road under all stops, so that the dashes never start again */
  .road::before {
    content: '';
    position: absolute;
    top: 0;
    bottom: 0;
    left: 30px;
    width: 12px;
    background: var(--tar);
  }
  .road::after {
    content: '';
    position: absolute;
    top: 0;
    bottom: 0;
    left: 35px;
    width: 2px;
    background: repeating-linear-gradient(180deg, var(--paint) 0 9px, transparent 9px 20px);
  }
  .stop {
    position: relative;
    display: grid;
    grid-template-columns: var(--rail) minmax(0, 1fr);
    --y: 28px;
    outline: none;
  }
  .stop.first {
    --y: 38px;
  }
  /* Each card, as the road in all, is painted by itself, so that an edit paints only the cards that it changes. What hangs out of one while it
     is written in lies over the next. */
  .stop > .card {
    margin: 7px 0;
    min-width: 0;
    isolation: isolate;
  }
  .stop:focus-within > .card {
    z-index: 1;
  }
  .stop.first > .card {
    margin-top: 18px;
  }
  .stop:focus-visible > .card {
    outline: 2px solid var(--pen);
    outline-offset: 3px;
    border-radius: var(--r-2);
  }
  .stop.dragged > .card {
    opacity: 0.55;
  }
  .rail {
    position: relative;
    z-index: 1;
  }
  /* A sign that turns costs something in every frame, also where nobody sees it. */
  .stop:has(> [far]) .mark.turns {
    animation: none;
    will-change: auto;
  }
  .post {
    all: unset;
    position: absolute;
    z-index: 3;
    left: 22px;
    top: calc(var(--y) - 14px);
    width: 28px;
    height: 28px;
    cursor: grab;
    touch-action: none;
  }
  .post:active {
    cursor: grabbing;
  }
  .post:focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: 2px;
    border-radius: 50%;
  }

  /* lanes: left = feeds the selected card (solid), right = fed by it (dashed) */
  .lane {
    position: absolute;
    z-index: 2;
    width: 14px;
    --dashes: repeating-linear-gradient(180deg, var(--link) 0 5px, transparent 5px 9px);
    animation: drawn var(--quick) var(--ease);
  }
  @keyframes drawn {
    from {
      opacity: 0;
    }
  }
  .lane.in {
    left: 9px;
  }
  .lane.out {
    right: 9px;
  }
  .lane::before,
  .lane::after {
    content: '';
    position: absolute;
  }
  .lane.run {
    top: 0;
    bottom: 0;
  }
  .lane.tail {
    top: calc(var(--y) + 11px);
    bottom: 0;
  }
  .lane.lead {
    top: 0;
    height: calc(var(--y) - 11px);
  }
  .lane.run::before,
  .lane.tail::before,
  .lane.lead::before {
    top: 0;
    bottom: 0;
    width: 2px;
  }
  .lane.in.run::before,
  .lane.in.tail::before,
  .lane.in.lead::before {
    left: 0;
    background: var(--link);
  }
  .lane.out.run::before,
  .lane.out.tail::before,
  .lane.out.lead::before {
    right: 0;
    background: var(--dashes);
  }
  .lane.bend-down {
    top: calc(var(--y) - 1px);
    height: 12px;
  }
  .lane.bend-up {
    top: calc(var(--y) - 11px);
    height: 12px;
  }
  .lane.bend-down::before,
  .lane.bend-up::before {
    inset: 0;
    border: 0 solid var(--link);
  }
  .lane.in.bend-down::before {
    border-width: 2px 0 0 2px;
    border-top-left-radius: 12px;
  }
  .lane.in.bend-up::before {
    border-width: 0 0 2px 2px;
    border-bottom-left-radius: 12px;
  }
  .lane.out.bend-down::before {
    border-width: 2px 2px 0 0;
    border-top-right-radius: 12px;
  }
  .lane.out.bend-up::before {
    border-width: 0 2px 2px 0;
    border-bottom-right-radius: 12px;
  }
  .lane.arrow::after {
    border: 5px solid transparent;
  }
  .lane.arrow.bend-up::after {
    bottom: -4px;
  }
  .lane.arrow.bend-down::after {
    top: -4px;
  }
  .lane.in.arrow::before {
    right: 6px;
  }
  .lane.in.arrow::after {
    right: 0;
    border-left: 8px solid var(--link);
    border-right: 0;
  }
  .lane.out.arrow::before {
    left: 5px;
  }
  .lane.out.arrow::after {
    left: -1px;
    border-right: 8px solid var(--link);
    border-left: 0;
  }

  /* between two stops */
  .between {
    position: absolute;
    z-index: 5;
    left: var(--rail);
    right: 0;
    bottom: -12px;
    height: 24px;
    display: flex;
    align-items: center;
    gap: 10px;
    opacity: 0;
    transition: opacity var(--quick);
    pointer-events: none;
  }
  .between > * {
    pointer-events: auto;
  }
  .between:hover,
  .between:focus-within,
  .between.open {
    opacity: 1;
  }
  .between::before {
    content: '';
    flex: 0 0 18px;
    height: 2px;
    background: var(--ink);
  }
  .between::after {
    content: '';
    flex: 1;
    height: 2px;
    background: var(--ink);
  }
  .between .plain {
    min-height: 24px;
    padding: 0 8px;
    background: var(--sheet);
    border: 1px solid var(--rule-3);
    border-radius: var(--r-2);
    text-decoration: none;
    font-size: var(--t-2);
  }
  .between .menu {
    position: absolute;
    left: 28px;
    top: 26px;
    z-index: 30;
  }
  .menu small {
    color: var(--ink-2);
    font: 400 var(--t-2) / 1.2 var(--face-read);
    margin-left: 8px;
  }
  .drop {
    position: absolute;
    z-index: 6;
    left: var(--rail);
    right: 0;
    height: 0;
    border-top: 3px dashed var(--pen);
    pointer-events: none;
  }
  .drop.before {
    top: -1px;
  }
  .drop.after {
    bottom: -1px;
  }

  .add {
    padding: 14px 0 40px;
    color: var(--ink-2);
  }
  .add p {
    margin: 0 0 6px;
    font: 600 var(--t-3) / 1.3 var(--face-sign);
    color: var(--ink);
  }
  .add ul {
    margin: 0;
    padding: 0;
    list-style: none;
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(21rem, 100%), 1fr));
    gap: 2px 24px;
  }
  .add li {
    display: grid;
    grid-template-columns: 6.5rem minmax(0, 1fr);
    gap: 8px;
    align-items: baseline;
    font: 400 var(--t-2) / 1.35 var(--face-read);
  }
  .add .plain {
    justify-self: start;
  }
  @media (max-width: 720px) {
    .road {
      padding: 0 10px 0 0;
    }
    .road::before {
      left: 9px;
      width: 10px;
    }
    .road::after {
      left: 13px;
    }
    .post {
      left: -7px;
      width: 42px;
      height: 42px;
      top: calc(var(--y) - 21px);
      display: grid;
      place-items: center;
    }
    .post .mark {
      width: 22px;
      height: 22px;
    }
    .lane {
      display: none;
    }
    .between {
      display: none;
    }
    .between.open {
      display: flex;
    }
  }
  @media print {
    .road::before,
    .road::after,
    .rail,
    .between,
    .add {
      display: none;
    }
    .road {
      padding: 0;
    }
    .stop {
      display: var(--off-sheet, block);
    }
    .stop.printed {
      display: block;
    }
    .stop > .card,
    .stop.first > .card {
      margin: 0;
    }
  }
`;
