import { css } from 'lit';

/** Colours and tags of the calls, in the table and in the panel: word, shape and colour together. */
export const callStyles = css`
  [data-call='leave'] {
    --c: var(--leave);
    --w: var(--leave-wash);
  }
  [data-call='replace'] {
    --c: var(--replace);
    --w: var(--replace-wash);
  }
  [data-call='carry'] {
    --c: var(--carry);
    --w: var(--carry-wash);
  }
  [data-call='keep'] {
    --c: var(--keep);
    --w: var(--keep-wash);
  }
  [data-call='way'] {
    --c: var(--way);
    --w: var(--way-wash);
  }
  .glyph {
    width: 22px;
    height: 16px;
    flex: none;
  }
  .call {
    display: inline-flex;
    align-items: center;
    gap: 7px;
    min-height: 25px;
    padding: 0 10px 0 6px;
    border: 1px solid currentColor;
    border-radius: var(--r-1);
    font: 600 var(--t-3) / 1 var(--face-sign);
    white-space: nowrap;
    background: var(--sheet);
    color: var(--c);
    vertical-align: middle;
  }
  .call.hand {
    border-bottom: 3px solid var(--pen);
  }
  .call.held {
    border-style: dashed;
    color: var(--ink-2);
    background: var(--sheet);
  }
  .byhand {
    color: var(--pen);
    font: 600 var(--t-2) / 1 var(--face-sign);
    margin-left: 8px;
    white-space: nowrap;
  }
`;
