import { css, html, type TemplateResult } from 'lit';
import { setProperty } from '../shared/set-property.ts';
import type { TallyReading } from './tally-reading.ts';

/** The gauge under a figure: how much of its limit is used, with the limit as a post at the end. */
export function gauge(reading: TallyReading): TemplateResult {
  const { limit } = reading;
  const share = limit ? Math.max(0, Math.min(1, limit.share)) : 0;
  const words = limit
    ? `${reading.shown} of ${limit.shown} ${reading.unit}${reading.room ? `, ${reading.room}` : ''}`
    : 'no limit';
  return html`<span
    class="gauge"
    data-level=${limit?.level ?? 'ok'}
    role="meter"
    aria-label=${reading.label}
    aria-valuemin="0"
    aria-valuemax="100"
    aria-valuenow=${Math.round(share * 100)}
    aria-valuetext=${words}
    ><b ${setProperty('--u', `${share * 100}%`)}></b
  ></span>`;
}

export const gaugeStyles = css`
  .gauge {
    position: relative;
    display: block;
    height: 6px;
    margin-top: 6px;
    background: var(--sheet-3);
    border-right: 2px solid var(--ink);
  }
  .gauge b {
    position: absolute;
    inset: 0 auto 0 0;
    width: var(--u);
    background: var(--ink);
    transition: width var(--settle) var(--ease);
  }
  .gauge[data-level='near'] b {
    background: repeating-linear-gradient(115deg, var(--ink) 0 5px, var(--caution-hatch) 5px 9px);
  }
  .gauge[data-level='over'] b {
    background: var(--fault);
  }
`;
