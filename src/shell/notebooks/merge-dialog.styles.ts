import { css } from 'lit';

export const mergeDialogStyles = css`
  .body {
    display: grid;
    gap: 10px;
    padding: 14px 24px 20px;
    line-height: 1.45;
  }
  .body li {
    padding-inline: 0;
  }
  .all {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 8px 16px;
    padding-bottom: 8px;
    border-bottom: 1px solid var(--ink-2);
  }
  .what span {
    overflow-wrap: anywhere;
  }
  .what .both,
  .other {
    color: var(--caution);
    font-weight: 500;
  }
  .since {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 12px;
  }
  .since .pick {
    flex: 1 1 200px;
    max-width: 340px;
  }
  .body .none,
  .body .bad {
    padding: 6px 0;
  }
  @media (max-width: 720px) {
    .body {
      padding-inline: 14px;
    }
  }
`;
