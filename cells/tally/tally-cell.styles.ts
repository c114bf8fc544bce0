import { css } from 'lit';

export const tallyCellStyles = css`
  td.num.of {
    min-width: 150px;
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
  /* Columns of a settled width: figures that come in move nothing. */
  @media (min-width: 721px) {
    table {
      table-layout: fixed;
    }
    th:nth-child(1) {
      width: 26%;
    }
    th:nth-child(2),
    th:nth-child(3),
    th:nth-child(4) {
      width: 15%;
    }
    td.num.of,
    td.lbl {
      min-width: 0;
    }
    td .name {
      overflow-wrap: anywhere;
    }
    th.room {
      width: 5.5rem;
    }
    th:nth-child(7) {
      width: 5.5rem;
    }
  }
  @media (max-width: 720px) {
    td.lbl {
      width: 48%;
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
