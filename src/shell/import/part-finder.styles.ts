import { css } from 'lit';

export const partFinderStyles = css`
  :host {
    padding: 8px 12px 10px;
    background: var(--sheet-2);
    border: 1px solid var(--rule-2);
    border-radius: var(--r-2);
  }
  .search {
    display: grid;
    gap: 3px;
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
  }
  input {
    min-height: 32px;
    padding: 0 10px;
    border: 1px solid var(--rule-3);
    border-radius: var(--r-2);
    background: var(--sheet);
    color: var(--pen);
    font: 500 var(--t-3) / 1.2 var(--face-read);
  }
  ul {
    margin-top: 6px;
    max-height: 264px;
    overflow-y: auto;
  }
  li {
    display: grid;
    grid-template-columns: 62px minmax(0, 1fr) auto auto;
    gap: 10px;
    align-items: center;
    padding: 4px 0;
    border-top: 1px solid var(--rule);
  }
  .ln {
    color: var(--ink-3);
    font-size: var(--t-1);
  }
  .what {
    overflow-wrap: anywhere;
  }
  em {
    font-style: normal;
    color: var(--ink-3);
  }
  .none {
    padding-top: 8px;
    color: var(--ink-2);
  }
  @media (max-width: 720px) {
    input {
      min-height: var(--touch);
    }
    li {
      grid-template-columns: minmax(0, 1fr) auto;
      gap: 2px 10px;
    }
    .ln {
      grid-column: 1 / -1;
    }
    .num {
      text-align: left;
    }
  }
`;
