import { css } from 'lit';

/**
 * A card: `.sheet` with its `header` (h2 name, `.gist`, `.link` feeds / fed by, `.state` word at far right),
 * the last line `.more`, the caution strip `.caution`, the fault box `.fault-box`, and pen (`.pen`).
 */
export const sheetStyles = css`
  .sheet {
    background: var(--sheet);
    border: 1px solid var(--rule-2);
    border-top: 3px solid var(--ink-2);
    border-radius: var(--r-2);
    box-shadow: var(--lift);
    min-width: 0;
  }
  /* Out of sight a card keeps its place, at the size it had, and costs no layout. */
  :host {
    contain-intrinsic-size: auto 320px;
  }
  :host([far]) {
    content-visibility: auto;
  }
  :host([selected]) .sheet {
    border-color: var(--ink);
    outline: 2px solid var(--ink);
    outline-offset: -1px;
  }
  .sheet.is-fault {
    border-top-color: var(--fault);
  }
  .sheet > header {
    display: flex;
    align-items: baseline;
    gap: 12px;
    padding: 8px 16px 7px;
    min-height: 40px;
  }
  .sheet h2 {
    font: 600 var(--t-5) / 1.25 var(--face-sign);
    white-space: nowrap;
  }
  .sheet.folded {
    border-top-width: 1px;
    border-top-color: var(--rule-2);
    background: var(--sheet-2);
  }
  .sheet.folded > header {
    min-height: 34px;
    padding: 4px 16px;
  }
  .sheet.folded h2 {
    font-size: var(--t-4);
  }
  .sheet.folded.is-fault {
    border-top: 3px solid var(--fault);
  }
  .fold {
    color: var(--ink-2);
  }
  .gist {
    color: var(--ink-2);
    font-size: var(--t-3);
    min-width: 0;
  }
  .link {
    font: 600 var(--t-2) / 1 var(--face-sign);
    color: var(--ink);
    white-space: nowrap;
    display: inline-flex;
    gap: 5px;
    align-items: center;
  }
  .link svg {
    width: 22px;
    height: 10px;
  }
  .state {
    margin-left: auto;
    display: inline-flex;
    align-items: baseline;
    gap: 12px;
    white-space: nowrap;
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-3);
  }
  .state .bad {
    color: var(--fault);
    font-weight: 600;
  }
  .state .busy {
    color: var(--ink);
    font-weight: 600;
  }
  .state .hand {
    color: var(--pen);
    font-weight: 600;
  }

  .pen {
    color: var(--pen);
    border-bottom: 1px solid var(--pen-rule);
    padding-bottom: 1px;
  }
  .pen-t {
    color: var(--pen);
  }

  .more {
    display: flex;
    align-items: center;
    gap: 14px;
    padding: 6px 16px 8px;
    border-top: 1px solid var(--rule-2);
    color: var(--ink-2);
    font-size: var(--t-2);
    min-height: 38px;
    flex-wrap: wrap;
  }
  .more .grow {
    margin-left: auto;
    display: flex;
    flex-wrap: wrap;
    gap: 14px;
  }

  .caution {
    display: grid;
    grid-template-columns: 20px minmax(0, 1fr);
    background: var(--caution-wash);
    color: var(--ink);
    border-top: 1px solid var(--rule-2);
    font-size: var(--t-3);
    line-height: 1.4;
  }
  .caution::before {
    content: '';
    background: repeating-linear-gradient(
      135deg,
      var(--caution-hatch) 0 7px,
      var(--caution-wash) 7px 14px
    );
    border-right: 1px solid var(--caution-hatch);
  }
  .caution > p,
  .caution > div {
    padding: 8px 16px 9px 14px;
    max-width: 108ch;
  }
  .caution b {
    font-family: var(--face-sign);
    font-weight: 700;
    color: var(--caution);
  }
  .safe {
    display: inline-block;
    width: 13px;
    height: 12px;
    color: var(--caution);
    vertical-align: -1px;
    margin-left: 6px;
  }

  .fault-line {
    display: inline-flex;
    align-items: baseline;
    gap: 7px;
    color: var(--fault);
    font-weight: 500;
  }
  .fault-line svg {
    width: 13px;
    height: 13px;
    flex: none;
    align-self: center;
    fill: currentColor;
  }
  .fault-box {
    display: flex;
    gap: 10px;
    align-items: center;
    flex-wrap: wrap;
    padding: 8px 16px;
    background: var(--fault-wash);
    border-top: 1px solid var(--fault-rule);
    font-size: var(--t-3);
  }
  .fault-box + .fault-box {
    border-top-color: var(--rule);
  }
  .fault-box b {
    color: var(--fault);
    font-weight: 600;
  }
  .fault-box > svg {
    width: 16px;
    height: 16px;
    color: var(--fault);
    fill: currentColor;
    flex: none;
  }
  .fault-box > .says {
    flex: 1 1 240px;
    min-width: 0;
    overflow-wrap: anywhere;
  }
  .fault-box .acts {
    margin-left: auto;
    display: flex;
    gap: 8px;
    align-items: center;
  }

  @media (max-width: 720px) {
    .sheet > header {
      flex-wrap: wrap;
      gap: 2px 10px;
      padding: 9px 12px 8px;
    }
    .sheet > header h2 {
      white-space: normal;
    }
    .sheet > header .gist {
      order: 3;
      flex-basis: 100%;
    }
    .sheet > header .link,
    .state .calm {
      display: none;
    }
    /* wider than it looks, so that a thumb finds it */
    .fold {
      min-width: var(--touch);
      margin-block: -6px;
    }
    .sheet.folded > header {
      padding: 5px 12px;
    }
    .more,
    .fault-box {
      padding-inline: 12px;
    }
    .fault-box .acts {
      margin-left: 0;
    }
    .caution {
      grid-template-columns: 12px minmax(0, 1fr);
    }
    .caution > p,
    .caution > div {
      padding: 8px 12px 9px 10px;
    }
  }
  @media print {
    .fold {
      display: none;
    }
  }
`;
