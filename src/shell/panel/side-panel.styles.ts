import { css } from 'lit';

export const sidePanelStyles = css`
  :host {
    display: block;
    min-width: 0;
  }
  .panel {
    position: sticky;
    top: var(--tally, 91px);
    max-height: calc(100vh - var(--tally, 91px));
    overflow-y: auto;
    padding: 18px 24px 24px 0;
    display: grid;
    gap: 16px;
    scrollbar-width: thin;
  }
  .crumbs {
    padding: 0 16px 8px;
    margin-top: -4px;
    font-size: var(--t-2);
  }
  .legend-fig {
    display: grid;
    grid-template-columns: 4.5rem 1fr;
    gap: 14px;
    align-items: start;
    line-height: 1.45;
  }
  .legend-fig > :first-child {
    justify-self: end;
    font: 600 var(--t-6) / 1.15 var(--face-sign);
  }
  .calls-key {
    display: grid;
    gap: 9px;
  }
  .calls-key li {
    display: grid;
    /* under each other where the text is set large */
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 10rem), 1fr));
    gap: 4px 10px;
    align-items: center;
    font-size: var(--t-2);
    color: var(--ink-2);
  }
  .marks-key {
    display: grid;
    gap: 10px;
  }
  .marks-key li {
    display: flex;
    gap: 12px;
    align-items: center;
  }
  .keys {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 4px 12px;
    font-size: var(--t-2);
    color: var(--ink-2);
  }
  kbd {
    font: 600 var(--t-2) / 1.3 var(--face-sign);
    color: var(--ink);
    white-space: nowrap;
  }
  .letters {
    display: flex;
    gap: 8px;
    align-items: center;
    margin-top: 9px;
    font-size: var(--t-2);
  }
  .letters input {
    accent-color: var(--ink);
    width: 16px;
    height: 16px;
    margin: 0;
  }

  @media (max-width: 1240px) {
    :host([shut]) {
      display: none;
    }
    /* The sheet stands on the screen wherever its own place on the page is; left out of the layout it would go there. */
    :host([far]) {
      content-visibility: visible;
    }
    .panel {
      position: fixed;
      inset: auto 0 0 0;
      top: auto;
      z-index: 30;
      max-height: 56vh;
      padding: 0 0 var(--slips, 0px);
      gap: 0;
      background: var(--sheet);
      border-top: 3px solid var(--ink);
      border-radius: var(--r-3) var(--r-3) 0 0;
      box-shadow: var(--lift-2);
      animation: rise var(--settle) var(--ease);
    }
    @keyframes rise {
      from {
        transform: translateY(40px);
        opacity: 0;
      }
    }
    .panel .slip {
      border: 0;
      border-radius: 0;
      box-shadow: none;
    }
    .slip > header {
      position: sticky;
      top: 0;
      background: var(--sheet);
      z-index: 2;
      border-bottom: 1px solid var(--rule-2);
      padding: 10px 12px 10px 16px;
    }
    .fold {
      display: inline-block;
    }
    .log {
      display: none;
    }
    .panel.less {
      max-height: calc(108px + var(--slips, 0px));
      overflow: hidden;
    }
  }
  @media (min-width: 721px) and (max-width: 1240px) {
    .slip:has(> .working > *) {
      display: grid;
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
      grid-template-rows: auto auto 1fr;
    }
    .slip > header,
    .slip > .crumbs {
      grid-column: 1 / -1;
    }
    .slip:has(> .working > *) > .card {
      border-left: 1px solid var(--rule);
    }
  }
  @media (max-width: 720px) {
    .panel {
      max-height: 54vh;
    }
  }
`;
