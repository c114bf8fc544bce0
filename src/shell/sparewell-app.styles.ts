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
  @media print {
    sw-head-bar,
    sw-tally-strip,
    sw-side-panel {
      display: none;
    }
    .bench {
      display: block;
    }
  }
`;
