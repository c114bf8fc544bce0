import { html, nothing, type TemplateResult } from 'lit';
import type { Picture, PictureHost } from './picture-host.ts';

/**
 * What more or less money would do to the chance of a recovery, with today's plan on it. The drawing asks a plan
 * rather than columns, so that it stands in an element of the plan's (cells/plan/frontier.ts), which works its
 * points out when it is looked at.
 */
export function spendingPicture(host: PictureHost): Picture {
  return {
    head: () => nothing,
    body(cell): TemplateResult {
      const name = cell.reads.plan ?? '';
      const there = host.notebook.document.cells.some((one) => one.kind === 'plan' && one.name === name);
      if (!there)
        return html`<figure aria-label="Picture"><p class="words">${
          name === '' ? 'No plan is read yet' : `There is no plan named ${name}`
        }: choose one under What this picture shows.</p></figure>`;
      return html`<figure aria-label="Picture">
        <sw-frontier .notebook=${host.notebook} .planName=${name} .atOnce=${true}></sw-frontier>
      </figure>`;
    },
    drawn(): void {},
  };
}
