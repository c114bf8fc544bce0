import { css } from 'lit';

export const planCellStyles = css`
  .stop {
    animation: late 0s 1.2s both;
  }
  @keyframes late {
    from {
      visibility: hidden;
    }
    to {
      visibility: visible;
    }
  }
  :host {
    container-type: inline-size;
  }
  .part {
    padding: 10px 16px 14px;
    border-top: 1px solid var(--rule-2);
  }
  .part.flush {
    padding: 0;
  }
  .part > h3,
  .flush > h3 {
    font: 600 var(--t-4b) / 1.25 var(--face-sign);
  }
  .part > h3 {
    margin-bottom: 6px;
  }
  .flush > h3 {
    padding: 10px 16px 6px;
  }
  h3 .beside {
    margin-left: 10px;
    font: 400 var(--t-2) / 1.3 var(--face-read);
    color: var(--ink-2);
  }
  /* Buttons that come and go take no room of their own, so that nothing moves when they do. */
  .one-line .plain,
  header .stop {
    margin-block: -10px;
  }
  .verdict {
    display: flex;
    gap: 10px;
    align-items: flex-start;
    padding: 6px 16px 12px;
    line-height: 1.4;
  }
  .verdict svg {
    flex: none;
    width: 20px;
    height: 20px;
    margin-top: 1px;
  }
  .verdict b {
    font: 600 var(--t-4b) / 1.25 var(--face-sign);
    margin-right: 6px;
  }
  .verdict[data-kind='short'] b,
  .verdict[data-kind='none'] b {
    color: var(--fault);
  }
  .verdict[data-kind='short'],
  .verdict[data-kind='none'] {
    --c: var(--fault);
  }
  .told {
    padding: 0 16px 12px 46px;
    line-height: 1.45;
  }
  .told li + li {
    margin-top: 3px;
  }
  .told .bad {
    color: var(--fault);
    font-weight: 500;
  }
  .sums {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(6.25rem, 1fr));
    gap: 10px 18px;
    padding: 10px 16px 12px;
    border-top: 1px solid var(--rule);
    background: var(--sheet-2);
  }
  .sums dt {
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
  }
  .sums dd {
    font: 600 var(--t-6) / 1.25 var(--face-sign);
  }
  .sums dd small {
    font: 400 var(--t-2) / 1 var(--face-read);
    color: var(--ink-2);
  }
  td.g {
    width: 24%;
  }
  td.g .gauge {
    margin: 0;
    min-width: 64px;
  }
  td.more-saves {
    color: var(--ink-2);
    font-size: var(--t-2);
    white-space: nowrap;
  }
  tr.over > td.num {
    color: var(--fault);
    font-weight: 600;
  }
  tbody.order > tr:first-child > th {
    height: auto;
    padding-top: 9px;
    padding-bottom: 6px;
    font: 600 var(--t-4) / 1.3 var(--face-sign);
    white-space: normal;
    background: var(--sheet-2);
    border-top: 1px solid var(--rule-2);
  }
  tbody.order > tr:first-child > td {
    background: var(--sheet-2);
    border-top: 1px solid var(--rule-2);
  }
  .order .when {
    margin-left: 10px;
    font: 400 var(--t-2) / 1.3 var(--face-read);
    color: var(--ink-2);
  }
  .order .by {
    font-weight: 600;
    color: var(--ink);
  }
  td.code {
    white-space: nowrap;
    color: var(--ink-2);
  }
  td.covers {
    line-height: 1.35;
    padding-block: 5px;
    min-width: 150px;
  }
  .kit {
    margin-right: 6px;
    padding: 1px 5px;
    border: 1px solid var(--rule-3);
    border-radius: var(--r-1);
    font: 600 var(--t-1) / 1.2 var(--face-sign);
    white-space: nowrap;
  }
  td.freight {
    color: var(--ink-2);
  }
  details.late {
    padding: 6px 16px 10px;
    border-top: 1px solid var(--rule-2);
  }
  summary {
    cursor: pointer;
    font: 600 var(--t-2) / 1.8 var(--face-sign);
  }
  .late li {
    display: grid;
    grid-template-columns: minmax(0, 1.2fr) minmax(0, 1fr) auto;
    gap: 4px 14px;
    padding: 4px 0;
    border-top: 1px solid var(--rule);
    font-size: var(--t-2);
  }
  .ask {
    display: flex;
    flex-wrap: wrap;
    gap: 6px 10px;
    align-items: center;
    margin-bottom: 10px;
  }
  .ask label {
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
  }
  .ask .pick {
    min-width: 220px;
  }
  .why {
    max-width: 560px;
  }
  .hand-line {
    color: var(--pen);
    line-height: 1.45;
    /* Two lines, which the answer takes. */
    min-height: 2.9em;
  }
  .bags th[scope='row'] {
    white-space: normal;
    padding-block: 5px;
  }
  .bags small {
    font-size: var(--t-2);
    font-weight: 400;
    color: var(--ink-2);
  }
  .bags th small {
    display: block;
  }
  .bags td {
    white-space: nowrap;
  }
  .bags .over {
    color: var(--fault);
    font-weight: 600;
  }
  .by-hand li {
    display: flex;
    flex-wrap: wrap;
    gap: 2px 8px;
    align-items: baseline;
    padding: 3px 0;
  }
  .by-hand b {
    color: var(--pen);
    font-weight: 600;
  }
  .barred-sign {
    width: 10px;
    height: 10px;
    margin-right: 4px;
  }
  .old {
    opacity: 0.8;
  }
  @container (max-width: 560px) {
    .part,
    .verdict,
    .sums,
    details.late {
      padding-inline: 12px;
    }
    .told {
      padding-inline: 12px;
    }
    .flush > h3 {
      padding-inline: 12px;
    }
    .one-line .beside {
      display: block;
      margin-left: 0;
      white-space: nowrap;
    }
    .one-line .plain,
    header .stop {
      margin-block: -14px;
    }
    .before {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .hand-line {
      min-height: 5.8em;
    }
    .limits td.g,
    .limits th.g {
      display: none;
    }
    /* For screen readers alone, and within the table: outside it would make the table scroll sideways. */
    .limits {
      position: relative;
    }
    .limits .more-saves {
      position: absolute;
      left: 0;
      width: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .limits th[scope='row'] {
      padding-block: 6px;
      white-space: normal;
    }
    .more-too {
      display: block;
      font-size: var(--t-2);
      color: var(--ink-2);
    }
    .shopping td.code,
    .shopping th.code,
    .shopping td.each,
    .shopping th.each {
      display: none;
    }
    td.covers .code-too {
      display: block;
      font-size: var(--t-2);
      color: var(--ink-2);
    }
    .late li {
      grid-template-columns: minmax(0, 1fr) auto;
    }
    .bags .limit {
      display: block;
    }
    .late li > :nth-child(2) {
      grid-column: 1 / -1;
      grid-row: 2;
    }
    summary {
      min-height: var(--touch);
      line-height: var(--touch);
    }
  }
  @container (min-width: 560.1px) {
    td.covers .code-too,
    .more-too {
      display: none;
    }
  }
`;
