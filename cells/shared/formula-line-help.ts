import { html, nothing, type TemplateResult } from 'lit';
import { callAt, parametersOf } from './formula-editor-help.ts';

/** The function whose call is being written: its parameters, the one at hand in bold, and what that one is. */
export function callHelp(formula: string, place: number): TemplateResult | typeof nothing {
  const call = callAt(formula, place);
  if (call === null) return nothing;
  const parameters = parametersOf(call.called);
  const now = parameters[call.argument];
  const list = parameters.map(
    (each, i) =>
      html`${i === 0 ? '' : ', '}<span class=${each === now ? 'now' : ''}>${each.name}${each.repeats ? '…' : ''}</span>`,
  );
  return html`<p class="call" aria-live="polite"><code>${call.called.name}(${list})</code>
    <span>${now === undefined ? `${call.called.about} All its arguments are written.` : html`<b>${now.name}</b>: ${now.about}${now.unit === '' ? '' : ` (${now.unit})`}${now.optional ? ', may be left out' : ''}`}</span></p>`;
}
