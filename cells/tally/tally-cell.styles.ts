import { css } from 'lit';

export const tallyCellStyles = css`
  td.num.of {
    min-width: 150px;
  }
  td.g {
    width: 26%;
  }
  td.g .gauge {
    margin: 0;
    min-width: 72px;
  }
  td.room {
    white-space: nowrap;
    color: var(--ink-2);
    font-size: var(--t-2);
  }
  td.room.over {
    color: var(--fault);
    font-weight: 600;
  }
  td.lbl {
    min-width: 196px;
  }
  td .name {
    all: unset;
    font: italic 400 var(--t-3) / 1.3 var(--face-ink);
    color: var(--ink-2);
    cursor: pointer;
  }
  td .name:hover {
    text-decoration: underline;
    text-decoration-color: var(--rule-3);
    text-underline-offset: 3px;
  }
  td .name:focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: 2px;
  }
  .big-fig {
    font: 600 var(--t-4b) / 1.2 var(--face-sign);
    white-space: nowrap;
  }
  td.acts {
    text-align: right;
    white-space: nowrap;
  }
  .adder {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    align-items: center;
  }
  .adder .pick {
    min-width: 150px;
  }
  td.worked {
    white-space: nowrap;
  }
  @media (max-width: 720px) {
    td.lbl {
      min-width: 0;
    }
    td.room,
    thead th.room,
    td.g,
    td.of,
    thead th.of,
    thead th.g {
      display: none;
    }
  }
`;
