import { css } from 'lit';

export const callWhyStyles = css`
  /* as high with a button in it as without, so that nothing below it moves */
  .headline {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0 12px;
    min-height: var(--hit);
    margin-bottom: 3px;
  }
  @media (max-width: 720px) {
    .headline {
      min-height: var(--touch);
    }
  }
  h3 {
    flex: 1 1 auto;
    font: 600 var(--t-3) / 1.3 var(--face-sign);
    color: var(--ink-2);
  }
  .headline .busy {
    font: 600 var(--t-2) / 1.2 var(--face-sign);
    color: var(--ink);
  }
  .says {
    line-height: 1.4;
    max-width: 68ch;
  }
  .says + .turns {
    margin-top: 8px;
  }
  .turns li {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 150px;
    column-gap: 12px;
    align-items: center;
    padding: 7px 0;
    border-top: 1px solid var(--rule);
  }
  .w {
    font-weight: 500;
  }
  .w small {
    display: block;
    font-size: var(--t-2);
    font-weight: 400;
    color: var(--ink-2);
  }
  .scale {
    position: relative;
    height: 30px;
  }
  .scale::before {
    content: '';
    position: absolute;
    left: 0;
    right: 0;
    top: 10px;
    border-top: 1px solid var(--rule-3);
  }
  .zone {
    position: absolute;
    top: 6px;
    left: var(--from);
    right: var(--to);
    height: 9px;
    background: repeating-linear-gradient(115deg, var(--c) 0 1.5px, transparent 1.5px 4.5px);
  }
  .dot {
    position: absolute;
    top: 5px;
    left: var(--at);
    width: 11px;
    height: 11px;
    margin-left: -5.5px;
    border-radius: 50%;
    background: var(--ink);
    box-shadow: 0 0 0 2px var(--sheet);
  }
  .pst {
    position: absolute;
    top: 2px;
    left: var(--at);
    width: 2px;
    height: 17px;
    margin-left: -1px;
    background: var(--c);
  }
  .lb {
    position: absolute;
    top: 18px;
    left: var(--at);
    transform: translateX(-50%);
    font-size: var(--t-1);
    line-height: 1;
    white-space: nowrap;
    color: var(--ink-2);
  }
  .lb.be {
    color: var(--c);
    font-weight: 700;
  }
  .there {
    margin-top: 8px;
    font-size: var(--t-2);
    line-height: 1.4;
    color: var(--ink-2);
  }
  .there .glyph {
    display: inline-block;
    vertical-align: -3px;
    color: var(--c);
  }
  .there b {
    color: var(--c);
  }
  .old {
    opacity: 0.8;
  }
  .nomatter {
    --c: var(--ink-2);
  }
`;
