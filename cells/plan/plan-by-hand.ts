import { html, type TemplateResult } from 'lit';
import type { PartCall } from '../../src/plan/plan-instance.ts';
import type { PinsDifference } from '../../src/plan/what-if.ts';
import { barredIcon } from '../shared/icons.ts';
import { money, percent } from './plan-words.ts';

/** What was set and forbidden by hand, and what to do to undo it. */
export interface ByHand {
  readonly pins: readonly PartCall[];
  readonly forbidden: readonly PartCall[];
  /** null until it is worked out. */
  readonly difference: PinsDifference | null;
  /** Working it out was stopped. */
  readonly stopped: boolean;
  readonly money: string;
  free(pin: PartCall): void;
  allow(ruledOut: PartCall): void;
}

/** The calls set and forbidden by hand, with what they cost against the proposed plan in money and in risk. */
export function byHandView({
  pins,
  forbidden,
  difference,
  stopped,
  money: unit,
  free,
  allow,
}: ByHand): TemplateResult {
  return html`<section class="part" aria-labelledby="hand"><h3 id="hand">Set by hand</h3>
    <p class="hand-line">${difference === null ? pendingWords(stopped) : pinsWords(difference, unit)}</p>
    <ul class="by-hand">${pins.map(
      (pin) => html`<li>${pin.part}: <b>${pin.call}</b>
        <button type="button" class="plain" @click=${() => free(pin)}>Free<span class="sr"> ${pin.part}</span></button></li>`,
    )}${forbidden.map(
      (one) => html`<li>${one.part}: <b>${barredIcon()}${one.call} forbidden</b>
        <button type="button" class="plain" @click=${() => allow(one)}>Allow<span class="sr"> ${one.part}, ${one.call}</span></button></li>`,
    )}</ul></section>`;
}

const pendingWords = (stopped: boolean): string =>
  stopped
    ? 'What this costs against the proposed plan was not worked out: it was stopped.'
    : 'What this costs against the proposed plan is being worked out.';

/**
 * `They cost 19.20 EUR more than the proposed plan, with 0.4 points more chance of a recovery.`
 */
export function pinsWords({ more_cost, more_risk, free }: PinsDifference, unit: string): string {
  const risk =
    Math.abs(more_risk) < 5e-5 ? 'and leave the chance of a recovery as it is' : riskWords(more_risk);
  const without = `Without them the plan comes to ${money(free.totals.expected_cost, unit)}, chance ${percent(free.totals.trip_risk)}.`;
  if (Math.abs(more_cost) < 0.005) return `They cost nothing against the proposed plan, ${risk}. ${without}`;
  const way = more_cost > 0 ? 'more' : 'less';
  return `They cost ${money(Math.abs(more_cost), unit)} ${way} than the proposed plan, ${risk}. ${without}`;
}

const riskWords = (more: number): string =>
  `with ${Math.abs(more * 100).toFixed(1)} points ${more > 0 ? 'more' : 'less'} chance of a recovery`;
