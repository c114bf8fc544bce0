import { css } from 'lit';

export const pairingCellStyles = css`
  .acts {
    display: inline-flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 14px;
  }
  .met {
    color: var(--ink-2);
  }
  .parents {
    display: inline-flex;
    align-items: center;
    gap: 6px;
    color: var(--ink-2);
  }
  .parents .pick select {
    field-sizing: content;
    width: auto;
    min-height: 26px;
    padding: 0 18px 0 2px;
    border: 0;
    border-bottom: 1px solid var(--rule-3);
    border-radius: 0;
    background: none;
    font: 600 var(--t-2) / 1.2 var(--face-sign);
  }
  .parents .pick::after {
    right: 5px;
    width: 6px;
    height: 6px;
  }
  .hint {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 14px;
    padding: 10px 16px 12px;
    border-top: 1px solid var(--rule);
    color: var(--ink-2);
  }
  @media (max-width: 720px) {
    .acts .plain {
      padding-inline: 0;
    }
    .parents .pick select {
      min-height: var(--touch);
    }
  }
`;
