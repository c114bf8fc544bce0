import { css } from 'lit';

/** The file's own rows under the pickers of their columns; what all tables of the dialog have in common. */
export const rowsPreviewStyles = css`
  .csv {
    position: relative;
    border: 1px solid var(--rule-2);
    border-radius: var(--r-2);
    overflow-x: auto;
  }
  table {
    border-collapse: collapse;
    width: 100%;
  }
  th,
  td {
    height: 28px;
    padding: 0 8px;
    text-align: left;
    font-weight: 400;
    white-space: nowrap;
  }
  th.num,
  td.num {
    text-align: right;
  }
  .csv td,
  .csv .orig {
    max-width: 210px;
    overflow: hidden;
    text-overflow: ellipsis;
    font: 400 var(--t-2) / 1.3 var(--face-raw);
  }
  .csv thead .orig {
    max-width: 130px;
  }
  /* Where a row goes stays in sight however wide the file is. */
  .csv .to {
    position: sticky;
    right: 0;
    z-index: 1;
    min-width: 132px;
    padding-right: 12px;
    border-left: 2px solid var(--rule-3);
    background: var(--sheet);
  }
  .csv thead .to {
    background: var(--sheet-2);
  }
  .csv thead th {
    min-width: 84px;
    padding: 8px 8px 6px;
    vertical-align: top;
    background: var(--sheet-2);
    border-bottom: 1px solid var(--ink-2);
  }
  .csv thead th:first-child {
    min-width: 0;
  }
  .csv .orig {
    display: block;
    margin-top: 5px;
    color: var(--ink-2);
  }
  .csv .orig.read {
    font-family: var(--face-read);
  }
  .csv th.to b {
    display: block;
    font: 600 var(--t-2) / 30px var(--face-sign);
  }
  .csv .pick {
    width: 100%;
    min-width: 106px;
  }
  .csv .pick select {
    min-height: 30px;
    padding: 0 22px 0 8px;
    font: 600 var(--t-2) / 1.2 var(--face-sign);
  }
  /* What is left out makes room for what is taken. */
  .csv td.off,
  .csv th.off .orig {
    max-width: 106px;
  }
  .csv .off {
    color: var(--ink-3);
  }
  .csv th.off select {
    color: var(--ink-3);
    border-style: dashed;
  }
  .csv td.ln {
    padding-left: 12px;
    font: 400 var(--t-1) / 1.3 var(--face-read);
    color: var(--ink-3);
  }
  .csv td.to {
    font: 400 var(--t-3) / 1.3 var(--face-read);
  }
  tbody td,
  tbody th {
    border-bottom: 1px solid var(--rule);
  }
  tbody tr:nth-child(5n) > * {
    border-bottom-color: var(--rule-2);
  }
  tbody tr:last-child > * {
    border-bottom: 0;
  }
  .csv tr.out > * {
    background: var(--fault-wash);
  }
  .fault-line {
    display: inline-flex;
    align-items: center;
    gap: 6px;
    color: var(--fault);
    font-weight: 500;
  }
  .fault-line svg {
    width: 13px;
    height: 13px;
  }
  @media (max-width: 720px) {
    .csv .to {
      position: static;
      min-width: 0;
    }
    .csv .pick select {
      min-height: var(--touch);
    }
    .csv th.to b {
      line-height: var(--touch);
    }
  }
`;
