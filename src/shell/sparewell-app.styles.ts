import { css } from 'lit';

export const sparewellAppStyles = css`
  :host {
    display: block;
    min-height: 100vh;
  }
  .bench {
    display: grid;
    grid-template-columns: minmax(0, 1fr) var(--panel);
    align-items: start;
  }
  /* The panel's column is as tall as the road, so that the panel can stay in sight all along it. */
  sw-side-panel {
    height: 100%;
  }
  .walk-offer {
    position: relative;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 14px;
    margin: 14px 24px 0 var(--rail);
    padding: 6px 16px;
    background: var(--sheet-2);
    border: 1px solid var(--rule-2);
    border-radius: var(--r-2);
    font: 500 var(--t-3) / 1.4 var(--face-sign);
  }
  /* The road comes in from the tally, past the slip; its dashes end where those of the stops begin. */
  .walk-offer::before,
  .walk-offer::after {
    content: '';
    position: absolute;
    top: -15px;
    bottom: -1px;
    left: calc(29px - var(--rail));
    width: 12px;
    background: var(--tar);
  }
  .walk-offer::after {
    left: calc(34px - var(--rail));
    width: 2px;
    background: repeating-linear-gradient(0deg, transparent 0 11px, var(--paint) 11px 20px);
  }
  .opening {
    padding: 40px 24px;
    color: var(--ink-2);
    font: 500 var(--t-4) / 1.4 var(--face-sign);
  }
  @media (max-width: 1380px) and (min-width: 1241px) {
    :host {
      --panel: 356px;
    }
  }
  @media (max-width: 1240px) {
    .bench {
      grid-template-columns: minmax(0, 1fr);
    }
    .bench.open {
      padding-bottom: 54vh;
    }
  }
  @media (max-width: 720px) {
    .walk-offer {
      margin-right: 10px;
      padding: 6px 12px;
    }
    .walk-offer::before {
      left: calc(8px - var(--rail));
      width: 10px;
    }
    .walk-offer::after {
      left: calc(12px - var(--rail));
    }
  }
  @media print {
    .walk-offer,
    sw-head-bar,
    sw-tally-strip,
    sw-side-panel {
      display: none;
    }
    :host {
      min-height: 0;
    }
    .bench,
    .bench.open {
      display: block;
      padding: 0;
    }
  }
`;
