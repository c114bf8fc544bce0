import { css } from 'lit';
import { dialogStyles } from '../dialog.styles.ts';

export const notebooksDialogStyles = [
  dialogStyles,
  css`
  dialog {
    width: min(680px, calc(100vw - 24px));
    max-height: calc(100vh - 32px);
    overflow-y: auto;
  }
  /* Its cross stays in reach in a long list. */
  header {
    position: sticky;
    top: 0;
    z-index: 1;
    padding: 14px 14px 10px 24px;
    background: var(--sheet);
    border-bottom: 1px solid var(--ink-2);
  }
  li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 6px 18px;
    padding: 11px 24px;
    border-bottom: 1px solid var(--rule);
  }
  .what {
    display: grid;
    gap: 2px;
    min-width: 0;
    flex: 1 1 240px;
    color: var(--ink-2);
  }
  b {
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
    color: var(--ink);
    overflow-wrap: anywhere;
  }
  input {
    width: 100%;
    min-height: 32px;
    margin-bottom: 6px;
    padding: 0 6px;
    border: 0;
    border-bottom: 1px solid var(--pen-rule);
    background: var(--pen-wash);
    color: var(--pen);
    font: 600 var(--t-4b) / 1.3 var(--face-sign);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0 12px;
  }
  .bad {
    display: flex;
    gap: 8px;
    align-items: baseline;
    color: var(--fault);
    font-weight: 500;
  }
  .bad svg {
    align-self: center;
  }
  .none,
  .taken,
  p.bad {
    padding: 12px 24px;
    color: var(--ink-2);
  }
  p.bad {
    color: var(--fault);
  }
  footer {
    display: flex;
    flex-wrap: wrap;
    justify-content: flex-end;
    gap: 10px;
    padding: 14px 24px 16px;
  }
  @media (max-width: 720px) {
    header,
    li,
    footer,
    .none,
    .taken,
    p.bad {
      padding-inline: 14px;
    }
    header {
      padding-block: 4px;
    }
    li {
      gap: 0 18px;
      padding-block: 7px 0;
    }
    .what {
      gap: 0;
    }
    footer {
      gap: 8px;
      padding-block: 10px;
    }
    footer .btn {
      padding-inline: 10px;
    }
    .acts .plain {
      padding-inline: 0;
    }
  }
`,
];
