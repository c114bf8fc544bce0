import { css } from 'lit';

export const tableCellStyles = css`
  .acts {
    display: inline-flex;
    flex-wrap: wrap;
    gap: 0 14px;
  }
  .hint {
    padding: 10px 16px 12px;
    border-top: 1px solid var(--rule);
    color: var(--ink-2);
  }
  @media (max-width: 720px) {
    .acts .plain {
      padding-inline: 0;
    }
  }
`;
