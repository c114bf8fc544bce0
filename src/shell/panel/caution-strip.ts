import { html, type TemplateResult } from 'lit';

/** Stands in the panel of every safety-critical part. */
export function cautionStrip(): TemplateResult {
  return html`<div class="caution">
    <p>
      <b>Safety-critical.</b> These figures plan money and days. They do not say that a part may be ridden on: the
      maker’s manual and its service limits come first, then local roadworthiness rules; in doubt, a licensed
      mechanic decides.
    </p>
  </div>`;
}
