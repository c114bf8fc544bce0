import { FAR } from './out-of-sight.ts';

/** How long the rule under a changed figure stands at full ink before it fades, in ms. */
const HOLD_MS = 700;
/** How long it takes to fade, in ms (the `--settle` of the look). */
const FADE_MS = 260;

const KEYFRAMES: Keyframe[] = [
  { boxShadow: 'inset 0 -2px 0 var(--ink)', offset: 0 },
  { boxShadow: 'inset 0 -2px 0 var(--ink)', offset: HOLD_MS / (HOLD_MS + FADE_MS) },
  { boxShadow: 'inset 0 -2px 0 transparent', offset: 1 },
];

/** The new figures are painted first, the rules come after, ms. */
const AFTER_MS = 32;

/** Figures that wait for their rule. */
const waiting = new Set<Element>();
/** Rules that were put under figures before; a figure that changes again has its own begin anew. */
const rules = new WeakMap<Element, Animation>();

/**
 * Put an ink rule under a figure that has just changed, and let it fade. Nothing under reduced motion, where
 * the words of the tally alone say what changed.
 */
export function inkRule(element: Element | null | undefined): void {
  if (!element) return;
  if (waiting.size === 0) setTimeout(ruleAll, AFTER_MS);
  waiting.add(element);
}

/** Take the rule from under a figure at once: something else is going to stand there. */
export function liftRule(element: Element): void {
  waiting.delete(element);
  rules.get(element)?.finish();
}

/** To begin the rule of a figure that nobody sees would have the browser lay out all that is out of sight. */
function isOutOfSight(figure: Element): boolean {
  const root = figure.getRootNode();
  return root instanceof ShadowRoot && root.host.hasAttribute(FAR);
}

function ruleAll(): void {
  const figures = [...waiting];
  waiting.clear();
  if (matchMedia('(prefers-reduced-motion: reduce)').matches) return;
  for (const figure of figures) {
    if (!figure.isConnected || isOutOfSight(figure)) continue;
    const held = rules.get(figure);
    if (held) {
      held.currentTime = 0;
      held.play();
    } else rules.set(figure, figure.animate(KEYFRAMES, { duration: HOLD_MS + FADE_MS, easing: 'linear' }));
  }
}
