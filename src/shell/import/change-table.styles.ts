import { css } from 'lit';

/** What a newer list changes. */
export const changeTableStyles = css`
  .scroll {
    position: relative;
    overflow-x: auto;
  }
  .diff {
    border-top: 1px solid var(--ink-2);
  }
  .diff thead {
    display: block;
  }
  .diff tbody th {
    max-width: 170px;
    overflow: hidden;
    text-overflow: ellipsis;
    padding-left: 0;
    font-weight: 500;
  }
  .diff td:last-child {
    padding-right: 0;
  }
  .diff td,
  .diff th {
    padding-inline: 5px;
  }
  .diff .bartd {
    width: 58px;
  }
  .diff .old {
    color: var(--ink-3);
    text-decoration: line-through;
    text-decoration-thickness: 1px;
  }
  .pm {
    position: relative;
    display: block;
    height: 10px;
    min-width: 48px;
    background: linear-gradient(
      90deg,
      transparent calc(50% - 0.5px),
      var(--rule-3) calc(50% - 0.5px) calc(50% + 0.5px),
      transparent calc(50% + 0.5px)
    );
  }
  .pm i {
    position: absolute;
    top: 1px;
    bottom: 1px;
    width: var(--w);
    background: var(--ink-2);
  }
  .pm.up i {
    left: 50%;
  }
  .pm.down i {
    right: 50%;
  }
  .named {
    padding-top: 7px;
    color: var(--ink-2);
    line-height: 1.4;
    overflow-wrap: anywhere;
  }
  .named b {
    font: 600 var(--t-3) / 1.3 var(--face-sign);
    color: var(--ink);
  }
  /* Its part above its prices, so that all of a change is in sight. */
  @media (max-width: 720px) {
    .diff,
    .diff tbody {
      display: block;
    }
    .diff tbody tr {
      display: grid;
      grid-template-columns: repeat(3, minmax(0, 1fr)) 104px;
      padding: 5px 0 6px;
      border-bottom: 1px solid var(--rule);
    }
    .diff tbody tr:last-child {
      border-bottom: 0;
    }
    .diff tbody tr > * {
      height: auto;
      border-bottom: 0;
    }
    .diff tbody th {
      grid-column: 1 / -1;
      max-width: none;
      white-space: normal;
    }
    .diff td:nth-child(2) {
      padding-left: 0;
    }
    .diff td:last-child {
      text-align: right;
    }
    .diff .bartd {
      display: none;
    }
  }
`;
