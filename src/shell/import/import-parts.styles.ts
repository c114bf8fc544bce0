import { css } from 'lit';

/** The dialog's right side: the file's rows, the parts, what was turned away, what changes. */
export const importPartsStyles = css`
  h3 {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 10px;
    margin-bottom: 7px;
    font: 600 var(--t-4) / 1.3 var(--face-sign);
  }
  h3 small {
    font: 400 var(--t-2) / 1.2 var(--face-read);
    color: var(--ink-2);
  }
  h3.bad {
    color: var(--fault);
  }
  h3 .mark svg {
    width: 13px;
    height: 13px;
    vertical-align: -1px;
  }
  h3 .turns,
  h3 .confirm {
    margin-left: auto;
  }
  .question {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
    margin-bottom: 14px;
    padding: 10px 14px 12px;
    background: var(--caution-wash);
    border-left: 8px solid var(--caution-hatch);
  }
  .question p {
    flex-basis: 100%;
    font-weight: 500;
    overflow-wrap: anywhere;
  }
  .question .btn {
    white-space: normal;
    line-height: 1.2;
    padding-block: 6px;
  }
  section + section,
  .two {
    margin-top: 18px;
  }
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
    border-left: 1px solid var(--rule);
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
  .lines {
    border-top: 1px solid var(--ink-2);
  }
  .lines > li {
    display: grid;
    grid-template-columns: 176px minmax(0, 1fr) 72px;
    gap: 4px 14px;
    align-items: start;
    padding: 4px 0;
    border-bottom: 1px solid var(--rule);
  }
  .lines > li > b,
  .offers > .quiet {
    padding: 3px 0;
    font-weight: 500;
  }
  .lines > li > .plain {
    justify-self: end;
  }
  .lines sw-part-finder {
    grid-column: 1 / -1;
  }
  .offers {
    display: grid;
  }
  .offers label {
    display: grid;
    grid-template-columns: 20px minmax(0, 1fr) auto;
    gap: 8px;
    align-items: start;
    padding: 3px 0;
    cursor: pointer;
  }
  .offers input,
  .all input {
    width: 16px;
    height: 16px;
    margin: 1px 0 0;
    accent-color: var(--pen);
  }
  .offers .taken .what {
    color: var(--pen);
  }
  .offers .maybe {
    color: var(--ink-2);
  }
  .what {
    overflow-wrap: anywhere;
  }
  .what em {
    font-style: normal;
    font-weight: 600;
    font-size: var(--t-2);
    color: var(--ink-3);
  }
  .what small {
    display: block;
    font-size: var(--t-2);
    color: var(--ink-2);
  }
  .all {
    display: flex;
    gap: 8px;
    align-items: center;
    padding: 8px 0;
  }
  fieldset {
    border-top: 1px solid var(--ink-2);
    padding-top: 4px;
  }
  .two {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 20px 28px;
    align-items: start;
  }
  .two section {
    margin: 0;
    min-width: 0;
  }
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
  .mainpart .hint {
    margin: 6px 0 0;
  }
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
  @media (min-width: 1100px) {
    .two:has(section + section) {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1.3fr);
    }
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
    .lines > li {
      grid-template-columns: minmax(0, 1fr) auto;
    }
    .lines > li > b {
      align-self: center;
    }
    .offers {
      grid-column: 1 / -1;
      grid-row: 2;
    }
    .offers label,
    .all {
      min-height: var(--touch);
      align-content: center;
      align-items: center;
    }
    .rej li {
      grid-template-columns: minmax(0, 1fr);
    }
    .mends {
      grid-column: 1;
      grid-row: auto;
      justify-content: flex-start;
    }
    .diff .bartd {
      display: none;
    }
    h3 .turns,
    h3 .confirm {
      margin-left: 0;
    }
  }
`;
