/** How long the rule under a changed figure stands at full ink before it fades, in ms. */
const HOLD_MS = 700;
/** How long it takes to fade, in ms (the `--settle` of the look). */
const FADE_MS = 260;

/**
 * Put an ink rule under a figure that has just changed, and let it fade. Nothing under reduced motion, where
 * the words of the tally alone say what changed.
 */
export function inkRule(element: Element | null | undefined): void {
  if (!element || matchMedia('(prefers-reduced-motion: reduce)').matches) return;
  element.animate(
    [
      { boxShadow: 'inset 0 -2px 0 var(--ink)', offset: 0 },
      { boxShadow: 'inset 0 -2px 0 var(--ink)', offset: HOLD_MS / (HOLD_MS + FADE_MS) },
      { boxShadow: 'inset 0 -2px 0 transparent', offset: 1 },
    ],
    { duration: HOLD_MS + FADE_MS, easing: 'linear' },
  );
}
