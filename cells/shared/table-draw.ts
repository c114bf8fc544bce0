import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';

/** How each surface is drawn as a line, 34 x 10: by the first of these words that its name contains. */
const SURFACE_LINES: readonly (readonly [word: string, line: SVGTemplateResult])[] = [
  ['broken', svg`<path d="M0 5h34" stroke="currentColor" stroke-width="2.4" stroke-dasharray="7 3 3 3"/>`],
  ['seal', svg`<path d="M0 5h34" stroke="currentColor" stroke-width="2.4"/>`],
  [
    'gravel',
    svg`<path d="M1 5h33" stroke="currentColor" stroke-width="3" stroke-linecap="round" stroke-dasharray="0 5.2"/>`,
  ],
  [
    'corrugat',
    svg`<path d="M0 5q2.1-6 4.25 0t4.25 0 4.25 0 4.25 0 4.25 0 4.25 0 4.25 0 4.25 0" fill="none" stroke="currentColor" stroke-width="1.8"/>`,
  ],
  [
    'sand',
    svg`<path d="M1 3h33M4 7.4h30" stroke="currentColor" stroke-width="1.7" stroke-linecap="round" stroke-dasharray="0 5.6"/>`,
  ],
  [
    'rock',
    svg`<path d="M0 8l4-6 4 6 5-6.5L17 8l4-4.5L25 8l5-6.5L34 8" fill="none" stroke="currentColor" stroke-width="1.8" stroke-linejoin="round"/>`,
  ],
  [
    'mud',
    svg`<path d="M1 7.6h8M13 7.6h8M25 7.6h8" stroke="currentColor" stroke-width="3.4"/><path d="M6 2.6h8M18 2.6h8" stroke="currentColor" stroke-width="1.6"/>`,
  ],
  [
    'water',
    svg`<path d="M0 3q4.25 4 8.5 0t8.5 0 8.5 0 8.5 0M0 7.4q4.25 4 8.5 0t8.5 0 8.5 0 8.5 0" fill="none" stroke="currentColor" stroke-width="1.5"/>`,
  ],
];

const OTHER_SURFACE = svg`<path d="M0 5h34" stroke="currentColor" stroke-width="1.4" stroke-dasharray="1.5 3.5"/>`;

/** A surface as a drawn line with its word; the word carries the meaning, the line is there to scan. */
export function surfaceLine(surface: string): TemplateResult {
  const known = surface.toLowerCase();
  const line = SURFACE_LINES.find(([word]) => known.includes(word))?.[1] ?? OTHER_SURFACE;
  return html`<span class="surf"><svg viewBox="0 0 34 10" aria-hidden="true">${line}</svg>${surface}</span>`;
}

/** Width of a share bar in px. */
const BAR_PX = 34;

/** A bar for a share of 0 to 1, drawn before its figure. Beyond that range it is full, or empty. */
export function shareBar(share: number): TemplateResult {
  const filledPx = Number.isFinite(share) ? Math.min(1, Math.max(0, share)) * BAR_PX : 0;
  return html`<svg class="share" viewBox="0 0 34 6" aria-hidden="true" focusable="false">
    <rect class="track" width="34" height="6"></rect><rect class="fill" width=${filledPx.toFixed(2)} height="6"></rect>
  </svg>`;
}
