import { FAR } from './out-of-sight.ts';

/** How long the rule under a changed figure stands at full ink before it fades, in ms. */
const HOLD_MS = 700;
/** How long it takes to fade, in ms (the `--settle` of the look). */
const FADE_MS = 260;

const KEYFRAMES: Keyframe[] = [
  { boxShadow: 'inset 0 -2px 0 var(--ink)' },
  { boxShadow: 'inset 0 -2px 0 transparent' },
];

/** The new figures are painted first, the rules come after, ms. */
const AFTER_MS = 32;

/** Figures that wait for their rule. */
const waiting = new Set<Element>();
/** Rules that were put under figures before; a figure that changes again has its own begin anew. */
const rules = new WeakMap<Element, Animation>();
/** Rules at full ink, and when they fade. One that stands is halted: one that runs has the page drawn in every frame. */
const held = new Map<Animation, number>();

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

const isCalm = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

function ruleAll(): void {
  const figures = [...waiting];
  waiting.clear();
  if (isCalm()) return;
  const fadesAtMs = performance.now() + HOLD_MS;
  for (const figure of figures) {
    if (!figure.isConnected || isOutOfSight(figure)) continue;
    const rule = rules.get(figure) ?? figure.animate(KEYFRAMES, { duration: FADE_MS, easing: 'linear' });
    rules.set(figure, rule);
    rule.currentTime = 0;
    rule.pause();
    held.set(rule, fadesAtMs);
  }
  setTimeout(fade, HOLD_MS);
}

function fade(): void {
  // Timers and the clock are not of one mind about the last millisecond.
  const nowMs = performance.now() + 1;
  for (const [rule, fadesAtMs] of held) {
    if (fadesAtMs > nowMs) continue;
    held.delete(rule);
    if (rule.playState !== 'paused') continue;
    if (isCalm()) rule.finish();
    else rule.play();
  }
}
