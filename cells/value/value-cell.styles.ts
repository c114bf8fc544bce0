import { css } from 'lit';

export const valueCellStyles = css`
  .blanks {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(9.875rem, 1fr));
    padding: 2px 16px 16px;
    gap: 14px 22px;
  }
  .blank {
    position: relative;
    min-width: 0;
  }
  .blank > .label {
    display: block;
    font: 500 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink-2);
    overflow-wrap: anywhere;
  }
  .name {
    all: unset;
    display: inline-block;
    max-width: 100%;
    box-sizing: border-box;
    overflow-wrap: anywhere;
    font: italic 400 var(--t-2) / 1.3 var(--face-ink);
    color: var(--ink-3);
    margin-top: 3px;
    cursor: pointer;
  }
  .name:hover {
    text-decoration: underline;
    text-decoration-color: var(--rule-3);
    text-underline-offset: 3px;
  }
  .blank.picked > .label {
    color: var(--ink);
  }
  .blank.picked > .label::before {
    content: '';
    /* Beside the label, so that picking moves nothing. */
    position: absolute;
    left: -9px;
    width: 4px;
    height: 1em;
    background: var(--ink);
  }
  /* A ruled line drawn over up to its post, as the gauges of the tally are. */
  .slide {
    appearance: none;
    display: block;
    width: 100%;
    height: 18px;
    margin: 5px 0 0;
    background: none;
    cursor: pointer;
  }
  .slide::-webkit-slider-runnable-track {
    height: 16px;
    background:
      linear-gradient(var(--pen) 0 0) 0 50% / var(--at) 3px no-repeat,
      linear-gradient(var(--pen-rule) 0 0) 0 50% / 100% 1px no-repeat;
  }
  .slide::-moz-range-track {
    height: 16px;
    background:
      linear-gradient(var(--pen) 0 0) 0 50% / var(--at) 3px no-repeat,
      linear-gradient(var(--pen-rule) 0 0) 0 50% / 100% 1px no-repeat;
  }
  .slide::-webkit-slider-thumb {
    appearance: none;
    width: 9px;
    height: 16px;
    border: 2px solid var(--sheet);
    border-width: 0 2px;
    border-radius: 0;
    background: var(--pen);
  }
  .slide::-moz-range-thumb {
    box-sizing: border-box;
    width: 9px;
    height: 16px;
    border: 2px solid var(--sheet);
    border-width: 0 2px;
    border-radius: 0;
    background: var(--pen);
  }
  .slide:hover::-webkit-slider-thumb {
    background: var(--ink);
  }
  .ends {
    display: flex;
    justify-content: space-between;
    font-size: var(--t-1);
    color: var(--ink-3);
  }
  .yesno {
    display: flex;
    margin-top: 3px;
    border-bottom: 1px solid var(--pen-rule);
    padding-bottom: 3px;
    gap: 4px;
  }
  .yesno button {
    all: unset;
    box-sizing: border-box;
    min-height: 26px;
    padding: 0 12px;
    border: 1px solid transparent;
    border-radius: var(--r-1);
    font: 500 var(--t-4) / 26px var(--face-sign);
    color: var(--ink-2);
    cursor: pointer;
  }
  .yesno button[aria-pressed='true'] {
    border-color: var(--pen);
    color: var(--pen);
    font-weight: 600;
  }
  .yesno button:hover {
    background: var(--pen-wash);
  }
  .yesno button:focus-visible {
    outline: 2px solid var(--pen);
    outline-offset: 2px;
  }
  @media (max-width: 720px) {
    .blanks {
      /* two beside each other, one where the text is set large */
      grid-template-columns: repeat(auto-fill, minmax(min(100%, 7.3rem), 1fr));
      padding: 2px 12px 14px;
      gap: 12px 16px;
    }
    .slide {
      height: var(--touch);
      margin-block: -5px -13px;
    }
    .slide::-webkit-slider-thumb {
      width: 14px;
      height: 22px;
    }
    .slide::-webkit-slider-runnable-track {
      height: 22px;
    }
    .slide::-moz-range-thumb {
      width: 14px;
      height: 22px;
    }
    .name {
      min-height: 32px;
    }
    .yesno button {
      min-height: 42px;
      line-height: 42px;
    }
  }
`;
