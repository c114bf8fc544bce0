import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';

const drawing = (viewBox: string, inside: SVGTemplateResult, part = ''): TemplateResult =>
  html`<svg class=${part} viewBox=${viewBox} aria-hidden="true" focusable="false">${inside}</svg>`;

/** Octagon with a bar: a fault. Filled with the colour of the text around it. */
export const faultIcon = (): TemplateResult =>
  drawing(
    '0 0 16 16',
    svg`<path d="M5 .8h6L15.2 5v6L11 15.2H5L.8 11V5z" fill="currentColor"/><path d="M8 4v4.6M8 10.6v1.6" stroke="var(--sheet)" stroke-width="1.8" fill="none"/>`,
  );

/** Ring with a bar across: ruled out by hand. */
export const barredIcon = (): TemplateResult =>
  drawing(
    '0 0 12 12',
    svg`<path d="M6 1.2a4.8 4.8 0 1 0 .01 0zM2.6 9.4l6.8-6.8" fill="none" stroke="currentColor" stroke-width="1.5"/>`,
    'barred-sign',
  );

/** Triangle beside the name of a safety-critical part; says so to a screen reader. */
export const cautionIcon = (): TemplateResult =>
  html`<svg class="safe" viewBox="0 0 14 13" role="img" aria-label="safety-critical"><path d="M7 1.2l6 11H1z" fill="var(--caution-hatch)" stroke="var(--caution)" stroke-width="1.2" stroke-linejoin="round"/><path d="M7 4.8v3.6M7 9.6v1.3" stroke="var(--on-hatch)" stroke-width="1.5" fill="none"/></svg>`;

/** Solid arrow: feeds. */
export const feedsIcon = (): TemplateResult =>
  drawing(
    '0 0 22 10',
    svg`<path d="M0 5h15" stroke="currentColor" stroke-width="2"/><path d="M14 .8 22 5l-8 4.2z" fill="currentColor"/>`,
  );

/** Dashed arrow: fed by. */
export const fedByIcon = (): TemplateResult =>
  drawing(
    '0 0 22 10',
    svg`<path d="M0 5h15" stroke="currentColor" stroke-width="2" stroke-dasharray="4 3"/><path d="M14 .8 22 5l-8 4.2z" fill="currentColor"/>`,
  );

export const closeIcon = (): TemplateResult =>
  html`<svg width="14" height="14" viewBox="0 0 14 14" aria-hidden="true" focusable="false"><path d="M2 2l10 10M12 2 2 12" stroke="currentColor" stroke-width="1.7" fill="none"/></svg>`;

/** The brand: a nut seen from above, with the road's centre line through it. */
export const brandIcon = (): TemplateResult =>
  drawing(
    '0 0 30 30',
    svg`<path d="M15 1.5 26.7 8.2v13.6L15 28.5 3.3 21.8V8.2z" fill="none" stroke="currentColor" stroke-width="2.4" stroke-linejoin="round"/><path d="M15 6.6v3.4M15 13.3v3.4M15 20v3.4" stroke="currentColor" stroke-width="2.6"/>`,
  );
