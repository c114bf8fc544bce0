/** Costs within this are the same: a tenth of a cent, so that what is shown is the same to a cent. */
const SAME_COST = 1e-3;

const MOST_STEPS = 60;

/** One look at a figure: what the plan with the call and the best plan without it cost there. */
export interface Look {
  /** Infinity where no plan with the call (or none without it) meets the limits. */
  readonly withCall: number;
  readonly without: number;
  /** The same two plans' costs at any other figure, calls and purchases as they are. */
  readonly withCallAt: (figure: number) => number;
  readonly withoutAt: (figure: number) => number;
}

export interface TurningPoint {
  readonly at: number;
  /** On which side of `at` the other call is the better one (or the call, where it was not). */
  readonly side: 'above' | 'below';
  /** `cost`: both cost the same at `at`. `limit`: beyond it one of the two no longer meets the limits. */
  readonly because: 'cost' | 'limit';
}

export interface TurnSearch {
  /** The figure as it is now. */
  readonly now: number;
  readonly least: number;
  readonly most: number;
  /** Whether costs of fixed plans are straight lines over the figure, which is then solved for exactly. */
  readonly straight: boolean;
  /** Smallest step of the figure that is told apart. */
  readonly step: number;
  readonly look: (figure: number) => Promise<Look>;
}

/**
 * Where a call turns: the figure nearest to `now` (as the two plans stand there) at which the best plan with
 * the call and the best plan without it cost the same. Each step solves for the figure at which the two plans
 * of the last look break even, and looks again there, as other plans may be better by then; for straight
 * lines that ends exactly, with halving as the safe way where a step would leave what is known.
 *
 * @returns null where the two never cost the same between `least` and `most`
 * Example: carry 10 + price, replace 40: look gives 35 and 40 at a price of 25, and the turn is above 30.
 */
export async function turningPoint(search: TurnSearch, first: Look): Promise<TurningPoint | null> {
  const startSign = Math.sign(difference(first));
  if (startSign === 0) return { at: search.now, side: 'above', because: 'cost' };
  let near = search.now;
  let far: number | null = null;
  let look = first;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const at = nextFigure(search, look, near, far);
    if (at === null) return null;
    const next = await search.look(at);
    const gap = difference(next);
    const side = at >= search.now ? 'above' : 'below';
    if (Math.abs(gap) <= SAME_COST) {
      const beyond = await lookBeyond(search, at);
      if (
        !beyond ||
        Math.sign(difference(beyond.look)) !== startSign ||
        Math.abs(difference(beyond.look)) <= SAME_COST
      )
        return { at, side, because: 'cost' };
      // They only touch there, and the same one is the better again: go on behind it.
      near = beyond.at;
      look = beyond.look;
      continue;
    }
    // Where neither plan meets the limits there is no gap: it is beyond the turn.
    if (Math.sign(gap) === startSign) near = at;
    else far = at;
    if (far !== null && Math.abs(far - near) <= search.step) return { at: near, side, because: 'limit' };
    if (Number.isFinite(gap)) look = next;
  }
  return null;
}

/** A small step further on; null where that is out of range. */
async function lookBeyond(
  { now, least, most, step, look }: TurnSearch,
  at: number,
): Promise<{ readonly at: number; readonly look: Look } | null> {
  const further = at + Math.sign(at - now) * Math.max(step, Math.abs(at - now) / 1000);
  if (further < least || further > most) return null;
  return { at: further, look: await look(further) };
}

/** Not a number where neither plan meets the limits. */
const difference = ({ withCall, without }: Look): number => without - withCall;

/** The figure at which the last look's two plans break even, or half-way where that is out of what is known. */
function nextFigure(search: TurnSearch, look: Look, near: number, far: number | null): number | null {
  const gapAt = (figure: number): number => look.withoutAt(figure) - look.withCallAt(figure);
  if (far !== null) {
    const root = search.straight ? lineRoot(gapAt, near, far) : null;
    const inside = root !== null && root > Math.min(near, far) && root < Math.max(near, far);
    return inside ? root : (near + far) / 2;
  }
  const root = search.straight ? lineRoot(gapAt, near, near + 1) : nearestRoot(gapAt, near, search);
  if (root === null || root < search.least || root > search.most || root === near) return null;
  // Once it has moved to one side it goes on there: on the other side everything is known already.
  if (near !== search.now && Math.sign(root - near) !== Math.sign(near - search.now)) return null;
  return root;
}

/** Where the straight line through two points is 0. */
function lineRoot(gapAt: (figure: number) => number, from: number, to: number): number | null {
  const start = gapAt(from);
  const slope = (gapAt(to) - start) / (to - from);
  return slope === 0 || !Number.isFinite(slope) ? null : from - start / slope;
}

/** The nearest figure, in proportion, at which the sign changes; found by steps of 5%, then by halving. */
function nearestRoot(
  gapAt: (figure: number) => number,
  from: number,
  { least, most }: Pick<TurnSearch, 'least' | 'most'>,
): number | null {
  const sign = Math.sign(gapAt(from));
  for (let step = 1; step <= 200; step += 1) {
    for (const factor of [1.05, 1 / 1.05]) {
      const outer = from * factor ** step;
      if (outer < least || outer > most || Math.sign(gapAt(outer)) === sign) continue;
      return halved(gapAt, from * factor ** (step - 1), outer, sign);
    }
  }
  return null;
}

function halved(gapAt: (figure: number) => number, near: number, far: number, nearSign: number): number {
  let inner = near;
  let outer = far;
  for (let step = 0; step < 60; step += 1) {
    const middle = (inner + outer) / 2;
    if (Math.sign(gapAt(middle)) === nearSign) inner = middle;
    else outer = middle;
  }
  return (inner + outer) / 2;
}
