import { html, type SVGTemplateResult, svg, type TemplateResult } from 'lit';
import type { CallKind } from './call-kind.ts';

const HOLLOW = 'M14.2 8 11 13.55H4.8L1.6 8l3.2-5.55H11z';
const SOLID = 'M15 8l-3.5 6.1H4.3L.8 8l3.5-6.1h7.2z';

/** Big hexagon: the part on the bike. Small square: what is in the pack. Hollow is old, solid is new. */
const GLYPHS: Readonly<Record<CallKind, SVGTemplateResult>> = {
  leave: svg`<path d=${HOLLOW} fill="none" stroke="currentColor" stroke-width="1.7"/>`,
  replace: svg`<path d=${SOLID} fill="currentColor"/>`,
  carry: svg`<path d="M12.6 5.2 11 2.45H4.8L1.6 8l3.2 5.55H11" fill="none" stroke="currentColor" stroke-width="1.7"/><rect x="13" y="7.6" width="8" height="7" fill="currentColor"/>`,
  keep: svg`<path d="M11.2 15H11l.2-8.9h3L11.5 1.9H4.3L.8 8l3.5 6.1h6.9z" fill="currentColor"/><rect x="13.3" y="8" width="7.2" height="6.2" fill="none" stroke="currentColor" stroke-width="1.5"/>`,
  // Old to begin with, new from a place on the road on: half hollow, half solid, and the road's dashes after it.
  way: svg`<path d=${HOLLOW} fill="none" stroke="currentColor" stroke-width="1.7"/><path d="M7.9 2.45H11L14.2 8 11 13.55H7.9z" fill="currentColor"/><path d="M16.4 8h2M20 8h2" stroke="currentColor" stroke-width="1.7"/>`,
};

/** The sign of a kind of call; the word always stands beside it. */
export function callGlyph(kind: CallKind): TemplateResult {
  return html`<svg class="glyph" viewBox="0 0 22 16" aria-hidden="true" focusable="false">${GLYPHS[kind]}</svg>`;
}
