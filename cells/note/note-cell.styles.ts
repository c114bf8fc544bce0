import { css } from 'lit';

export const noteCellStyles = css`
  .prose {
    padding: 0 16px 14px;
    font-size: var(--t-4);
    line-height: var(--lh-prose);
    color: var(--ink);
    cursor: text;
    overflow-wrap: anywhere;
  }
  .prose > * {
    max-width: 74ch;
  }
  .prose > * + * {
    margin-top: 0.6em;
  }
  .prose h3,
  .prose h4,
  .prose h5,
  .prose h6 {
    font: 600 var(--t-4a) / 1.3 var(--face-sign);
    margin-top: 1em;
  }
  .prose > :first-child {
    margin-top: 0;
  }
  .prose ul,
  .prose ol {
    padding-left: 1.3em;
  }
  .prose ul {
    list-style: square;
  }
  .prose ol {
    list-style: decimal;
  }
  .prose li::marker {
    color: var(--ink-3);
  }
  .prose code {
    font: italic 400 1.04em/1.3 var(--face-ink);
    color: var(--ink);
  }
  .prose pre {
    padding: 8px 12px;
    background: var(--sheet-2);
    overflow-x: auto;
  }
  .prose pre code {
    font: 400 var(--t-3) / 1.4 var(--face-raw);
  }
  .prose blockquote {
    margin: 0.6em 0 0;
    padding-left: 14px;
    border-left: 3px solid var(--rule-2);
    color: var(--ink-2);
  }
  .prose hr {
    border: 0;
    border-top: 1px solid var(--rule-2);
  }
  .plain-text {
    white-space: pre-wrap;
  }
  .empty {
    color: var(--ink-3);
  }
  .caution .prose {
    padding: 2px 16px 14px 14px;
    max-width: none;
  }
  .caution {
    border-top: 0;
    border-radius: 0 0 var(--r-2) var(--r-2);
  }
  .sheet.is-caution > header {
    background: var(--caution-wash);
    padding-left: 34px;
    position: relative;
  }
  .sheet.is-caution > header::before {
    content: '';
    position: absolute;
    inset: 0 auto 0 0;
    width: 20px;
    background: repeating-linear-gradient(135deg, var(--caution-hatch) 0 7px, var(--caution-wash) 7px 14px);
    border-right: 1px solid var(--caution-hatch);
  }
  .sheet.is-caution h2 {
    color: var(--caution);
  }
  .write {
    padding: 0 16px 12px;
  }
  textarea {
    display: block;
    width: 100%;
    min-height: 132px;
    padding: 9px 11px;
    border: 0;
    border-radius: var(--r-1);
    background: var(--pen-wash);
    box-shadow: 0 0 0 2px var(--pen);
    outline: none;
    color: var(--pen);
    font: 400 var(--t-4) / var(--lh-prose) var(--face-read);
    resize: vertical;
    field-sizing: content;
    max-height: 70vh;
  }
  .foot {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 6px 14px;
    padding-top: 9px;
    font-size: var(--t-2);
    color: var(--ink-2);
  }
  .foot .acts {
    margin-left: auto;
    display: flex;
    gap: 10px;
    align-items: center;
  }
  .foot label {
    display: inline-flex;
    gap: 6px;
    align-items: center;
    min-height: 28px;
  }
  .foot input {
    accent-color: var(--ink);
    width: 16px;
    height: 16px;
    margin: 0;
  }
  @media (max-width: 720px) {
    .prose,
    .write {
      padding-inline: 12px;
    }
    .sheet.is-caution > header {
      padding-left: 22px;
    }
    .sheet.is-caution > header::before {
      width: 12px;
    }
    .caution .prose {
      padding-left: 10px;
    }
  }
`;
