import { css } from 'lit';

/** What was set aside, with what mends it, and the questions asked in a line. */
export const setAsideStyles = css`
  .rej {
    border-top: 1px solid var(--ink-2);
  }
  .rej li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 3px 12px;
    align-items: center;
    padding: 8px 0 9px;
    border-bottom: 1px solid var(--rule);
  }
  .rej code {
    font: 400 var(--t-2) / 1.3 var(--face-raw);
    color: var(--ink-2);
    overflow-wrap: anywhere;
  }
  .rej .why {
    grid-column: 1;
    font-weight: 500;
    color: var(--fault);
  }
  .rej.quiet .why {
    color: var(--ink-2);
    font-weight: 400;
  }
  .mends {
    grid-column: 2;
    grid-row: 1 / 3;
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    gap: 6px;
  }
  .mends form {
    display: flex;
    gap: 6px;
  }
  .mends input {
    width: 92px;
  }
  .rej .fill {
    grid-column: 1 / -1;
    min-width: 0;
  }
  .fill form {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 10px;
    align-items: end;
    padding-top: 4px;
  }
  .fill label span {
    display: block;
    font: 500 var(--t-2) / 1.3 var(--face-sign);
    color: var(--ink-2);
  }
  .fill input {
    width: 116px;
  }
  .ask {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    align-items: center;
    padding: 8px 12px;
    margin-bottom: 8px;
    background: var(--caution-wash);
    border-left: 8px solid var(--caution-hatch);
  }
  .ask input {
    width: 92px;
  }
  .aside > .plain {
    margin-top: 6px;
  }
  .lost {
    display: flex;
    gap: 6px;
    margin: 6px 0;
    color: var(--fault);
  }
  @media (max-width: 720px) {
    .rej li {
      grid-template-columns: minmax(0, 1fr);
    }
    .mends {
      grid-column: 1;
      grid-row: auto;
      justify-content: flex-start;
    }
  }
`;
