import { css, html, svg, type TemplateResult } from 'lit';
import type { CardState } from '../../../cells/shared/card-state.ts';

const TICK = svg`<path class="on" d="M9.4 14.4l3.2 3.2 6-6.6" stroke-width="2.2"/>`;
const BAR = svg`<path class="on-f" d="M12.7 8h2.6v7.4h-2.6zM12.7 17.4h2.6V20h-2.6z"/>`;
const TURNING = svg`<circle class="edge" cx="14" cy="14" r="9" stroke-width="2" opacity=".35"/><path class="edge" d="M14 5a9 9 0 0 1 9 9" stroke-width="3.4"/><circle class="solid" cx="14" cy="14" r="2.4"/>`;

/**
 * The sign a card has on the road: a disc with a tick when settled, a ring with a turning quarter while
 * working, an octagon with a bar at a fault, a dashed ring while it waits; a diamond round the sign when the
 * card is selected.
 */
export function waymark(state: CardState['state'] | 'empty', selected: boolean): TemplateResult {
  const turns = state === 'working' && !selected ? 'turns' : '';
  return html`<svg class="mark ${turns}" data-s=${state} viewBox="0 0 28 28" overflow="visible" aria-hidden="true" focusable="false">${selected ? diamond(state) : sign(state)}</svg>`;
}

function sign(state: CardState['state'] | 'empty'): unknown {
  switch (state) {
    case 'settled':
      return svg`<circle class="face" cx="14" cy="14" r="12"/><circle class="solid" cx="14" cy="14" r="10"/>${TICK}`;
    case 'working':
      return svg`<circle class="face" cx="14" cy="14" r="12"/>${TURNING}`;
    case 'fault':
      return svg`<path class="face" d="M8.6 .8h10.8L27.2 8.6v10.8l-7.8 7.8H8.6L.8 19.4V8.6z"/><path class="solid" d="M9.6 3.2h8.8l6.4 6.4v8.8l-6.4 6.4H9.6l-6.4-6.4V9.6z"/>${BAR}`;
    case 'waiting':
      return svg`<circle class="face" cx="14" cy="14" r="12"/><circle class="edge" cx="14" cy="14" r="9" stroke-width="2" stroke-dasharray="4 3"/><path class="edge" d="M10 14h8" stroke-width="2.2"/>`;
    case 'empty':
      return svg`<circle class="face" cx="14" cy="14" r="12"/><circle class="edge" cx="14" cy="14" r="9" stroke-width="2" stroke-dasharray="4 3"/>`;
  }
}

function diamond(state: CardState['state'] | 'empty'): unknown {
  const inside =
    state === 'fault'
      ? BAR
      : state === 'settled'
        ? TICK
        : svg`<path class="on" d="M10 14h8" stroke-width="2.2"/>`;
  return svg`<path class="face" d="M14-3 31 14 14 31-3 14z"/><path class="solid" d="M14-.4 28.4 14 14 28.4-.4 14z"/>${inside}`;
}

export const waymarkStyles = css`
  .mark {
    display: block;
    width: 28px;
    height: 28px;
    color: var(--ink);
  }
  .mark .face {
    fill: var(--sheet);
  }
  .mark .edge {
    stroke: var(--ink);
    fill: none;
  }
  .mark .solid {
    fill: var(--ink);
  }
  .mark .on {
    stroke: var(--sheet);
    fill: none;
  }
  .mark .on-f {
    fill: var(--sheet);
  }
  .mark[data-s='fault'] .solid {
    fill: var(--fault);
  }
  .mark[data-s='fault'] .on-f {
    fill: var(--on-solid);
  }
  /* The sign as a whole: a part of it that turned would have the page laid out anew in each frame. */
  .mark.turns {
    will-change: transform;
    animation: turn 1.6s linear infinite;
  }
  @keyframes turn {
    to {
      transform: rotate(360deg);
    }
  }
  @media (prefers-reduced-motion: reduce) {
    .mark.turns {
      animation: none !important;
    }
  }
`;
