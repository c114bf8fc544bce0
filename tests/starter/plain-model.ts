import erfc from '@stdlib/math-base-special-erfc';
import gamma from '@stdlib/math-base-special-gamma';

/**
 * Sections 1 to 6 of the model once more, as plain loops over one part, written from the text alone and
 * sharing nothing with src: the independent side of the starter tests. The only things borrowed are erfc and
 * gamma of a public library; everything else is summed or integrated here, slowly.
 */

export const phi = (z: number): number => erfc(-z / Math.SQRT2) / 2;

/** Normal quantile by bisection: slow, but it leans on nothing but phi. */
function quantile(chance: number): number {
  let low = -9;
  let high = 9;
  for (let step = 0; step < 90; step += 1) {
    const middle = (low + high) / 2;
    if (phi(middle) < chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const likely201 = Array.from({ length: 201 }, (_, k) => quantile((k + 0.5) / 201));

/** A fitted part; null where it has no such figure. Reach, age and lives in sealed-equivalent km. */
export interface PlainPart {
  readonly allowance: number | null;
  readonly fullAllowance: number | null;
  /** Per 1,000 km. */
  readonly rate: number | null;
  readonly middleLifeKm: number | null;
  readonly spread: number;
  readonly readingError: number;
  readonly ageKm: number;
  readonly lifeKm: number | null;
  readonly shape: number | null;
}

const newPart = (part: PlainPart): PlainPart => ({
  ...part,
  allowance: part.fullAllowance,
  readingError: 0,
  ageKm: 0,
});

/** W(X), section 2. */
export function wearChance(part: PlainPart, reachKm: number): number {
  const { allowance, rate, spread, middleLifeKm, ageKm } = part;
  if (allowance !== null) {
    const wear = (rate! * reachKm) / 1000;
    const reached = (left: number): number =>
      left <= 0 ? 1 : wear === 0 ? 0 : phi(Math.log(wear / left) / spread);
    if (part.readingError === 0) return reached(allowance);
    return likely201.reduce((sum, e) => sum + reached(allowance + part.readingError * e), 0) / 201;
  }
  if (middleLifeKm === null) return 0;
  const lasts = (km: number): number => (km === 0 ? 1 : phi(-Math.log(km / middleLifeKm) / spread));
  return 1 - lasts(ageKm + reachKm) / lasts(ageKm);
}

/** S(X | a), section 3. */
export function suddenSurvival(part: PlainPart, reachKm: number): number {
  if (part.lifeKm === null) return 1;
  const hazard = (km: number): number => (km / part.lifeKm!) ** part.shape!;
  return Math.exp(hazard(part.ageKm) - hazard(part.ageKm + reachKm));
}

export const stillFit = (part: PlainPart, reachKm: number): number =>
  (1 - wearChance(part, reachKm)) * suddenSurvival(part, reachKm);

/** Mean residual life by Simpson's rule on the conditional survival; gamma function from new. */
function residualLifeKm(ageKm: number, lifeKm: number, shape: number): number {
  if (ageKm === 0) return lifeKm * gamma(1 + 1 / shape);
  if (shape === 1) return lifeKm;
  const survives = (km: number): number =>
    Math.exp((ageKm / lifeKm) ** shape - ((ageKm + km) / lifeKm) ** shape);
  let farKm = lifeKm;
  while (survives(farKm) > 1e-16) farKm *= 1.2;
  const pieces = 40_000;
  const step = farKm / pieces;
  let sum = survives(0) + survives(farKm);
  for (let k = 1; k < pieces; k += 1) sum += survives(k * step) * (k % 2 === 1 ? 4 : 2);
  return (sum * step) / 3;
}

/** Partial expectation of what is left of a lognormal life past t: E[(T - t)+]. */
function expectedPast(km: number, middleKm: number, spread: number): number {
  const mean = middleKm * Math.exp(spread ** 2 / 2);
  if (km === 0) return mean;
  const z = Math.log(middleKm / km) / spread;
  return mean * phi(z + spread) - km * phi(z);
}

/** L(X), section 6. */
export function leftShare(part: PlainPart, reachKm: number): number {
  const survives = suddenSurvival(part, reachKm);
  let byWear: number | null = null;
  if (part.allowance !== null) {
    const a = part.allowance;
    let left = 0;
    if (a > 0 && reachKm === 0) left = a;
    else if (a > 0) {
      const m = Math.log((part.rate! * reachKm) / 1000);
      const z = (Math.log(a) - m) / part.spread;
      left = a * phi(z) - Math.exp(m + part.spread ** 2 / 2) * phi(z - part.spread);
    }
    byWear = Math.min(1, Math.max(0, Math.min(a, left)) / part.fullAllowance!) * survives;
  } else if (part.middleLifeKm !== null) {
    const middle = part.middleLifeKm;
    const lasts = part.ageKm === 0 ? 1 : phi(-Math.log(part.ageKm / middle) / part.spread);
    const mean = middle * Math.exp(part.spread ** 2 / 2);
    const past = expectedPast(part.ageKm + reachKm, middle, part.spread);
    byWear = Math.min(1, past / (lasts * mean)) * survives;
  }
  if (part.lifeKm === null) return byWear!;
  const residual = residualLifeKm(part.ageKm + reachKm, part.lifeKm, part.shape!);
  const fresh = residualLifeKm(0, part.lifeKm, part.shape!);
  const bySudden = (1 - wearChance(part, reachKm)) * survives * Math.min(1, residual / fresh);
  return byWear === null ? bySudden : Math.min(byWear, bySudden);
}

interface LegChances {
  readonly worn: number[];
  readonly sudden: number[];
}

/** Section 4 for a part fitted at the end of leg `from` (0: before the start), legs counted from 1. */
export function chancesFrom(part: PlainPart, reachKm: readonly number[], from: number): LegChances {
  const worn: number[] = reachKm.map(() => 0);
  const sudden: number[] = reachKm.map(() => 0);
  const start = reachKm[from]!;
  const due = wearChance(part, 0);
  for (let leg = from + 1; leg < reachKm.length; leg += 1) {
    const w0 = wearChance(part, reachKm[leg - 1]! - start);
    const w1 = wearChance(part, reachKm[leg]! - start);
    const s0 = suddenSurvival(part, reachKm[leg - 1]! - start);
    const s1 = suddenSurvival(part, reachKm[leg]! - start);
    worn[leg] = ((w1 - w0) * (s1 + s0)) / 2 + (leg === from + 1 ? due : 0);
    sudden[leg] = ((s0 - s1) * (1 - w1 + (1 - w0))) / 2;
  }
  return { worn, sudden };
}

/** What each leg costs, arrays with index 0 unused. */
export interface LegCosts {
  readonly worn: readonly number[];
  readonly sudden: readonly number[];
  readonly fixed: readonly number[];
  /** Fitting a new one, planned, at any leg's end. */
  readonly planned: number;
}

const sumLegs = (from: number, legs: number, of: (leg: number) => number): number => {
  let sum = 0;
  for (let leg = from + 1; leg <= legs; leg += 1) sum += of(leg);
  return sum;
};

/** Expected cost on the road of each call, and the expected share of life left, section 6. */
export function roadOf(part: PlainPart, reachKm: readonly number[], costs: LegCosts) {
  const legs = reachKm.length - 1;
  const all = (of: (leg: number) => number): number[] => {
    const values = Array.from({ length: legs + 1 }, () => 0);
    for (let leg = legs; leg >= 0; leg -= 1) values[leg] = of(leg);
    return values;
  };
  const fresh = newPart(part);
  const q = Array.from({ length: legs + 1 }, (_, from) => chancesFrom(fresh, reachKm, from));
  const o = Array.from({ length: legs + 1 }, (_, from) => chancesFrom(part, reachKm, from));
  const unshared = (table: LegChances[], from: number, next: number[]): number =>
    sumLegs(
      from,
      legs,
      (j) =>
        table[from]!.worn[j]! * (costs.worn[j]! + next[j]!) +
        table[from]!.sudden[j]! * (costs.sudden[j]! + next[j]!),
    );
  const spared = (table: LegChances[], from: number, next: number[]): number =>
    sumLegs(
      from,
      legs,
      (j) => (table[from]!.worn[j]! + table[from]!.sudden[j]!) * (costs.fixed[j]! + next[j]!),
    );
  const u: number[] = Array.from({ length: legs + 1 }, () => 0);
  const k: number[] = Array.from({ length: legs + 1 }, () => 0);
  for (let leg = legs; leg >= 0; leg -= 1) {
    u[leg] = unshared(q, leg, u);
    k[leg] =
      leftShare(fresh, reachKm[legs]! - reachKm[leg]!) +
      sumLegs(leg, legs, (j) => (q[leg]!.worn[j]! + q[leg]!.sudden[j]!) * k[j]!);
  }
  const u1 = all((leg) => spared(q, leg, u));
  const u2 = all((leg) => spared(q, leg, u1));
  const put = all((leg) => unshared(o, leg, u));
  const j = all(
    (leg) =>
      leftShare(part, reachKm[legs]! - reachKm[leg]!) +
      sumLegs(leg, legs, (later) => (o[leg]!.worn[later]! + o[leg]!.sudden[later]!) * k[later]!),
  );
  const p = (leg: number): number => o[0]!.worn[leg]! + o[0]!.sudden[leg]!;
  const first = (leg: number): number => q[0]!.worn[leg]! + q[0]!.sudden[leg]!;
  const leaveTo = (t: number): number =>
    sumLegs(
      0,
      t,
      (i) => o[0]!.worn[i]! * (costs.worn[i]! + u[i]!) + o[0]!.sudden[i]! * (costs.sudden[i]! + u[i]!),
    );
  const used = (next: number[]) =>
    all((leg) => sumLegs(leg, legs, (i) => (q[leg]!.worn[i]! + q[leg]!.sudden[i]!) * (1 + next[i]!)));
  const none = u.map(() => 0);
  const used1 = used(none);
  const used2 = used(used1);
  return {
    p,
    leave: leaveTo(legs),
    replace: u[0]!,
    carry: [u, u1, u2].map((next) => spared(o, 0, next)),
    keep: spared(q, 0, put),
    change: (t: number): number => leaveTo(t) + stillFit(part, reachKm[t]!) * (costs.planned + u[t]!),
    shareLeave: leftShare(part, reachKm[legs]!) + sumLegs(0, legs, (i) => p(i) * k[i]!),
    shareReplace: k[0]!,
    shareKeep: leftShare(fresh, reachKm[legs]!) + sumLegs(0, legs, (i) => first(i) * j[i]!),
    shareChange: (t: number): number =>
      sumLegs(0, t, (i) => p(i) * k[i]!) + stillFit(part, reachKm[t]!) * k[t]!,
    /** Expected spares used when 1, 2 or 3 are packed. */
    used: [none, used1, used2].map((next) => sumLegs(0, legs, (i) => p(i) * (1 + next[i]!))),
  };
}

/** Expected hits past `spares` of a Poisson count. */
export function poissonOver(spares: number, mean: number): number {
  let term = Math.exp(-mean);
  let sum = 0;
  for (let hits = 0; hits < 400; hits += 1) {
    if (hits > spares) sum += (hits - spares) * term;
    term *= mean / (hits + 1);
  }
  return sum;
}

/** Random hits of section 6: expected cost on the road with `spares` shared by `bikes`. */
export function hitCost(
  lifeKm: number,
  bikes: number,
  reachKm: readonly number[],
  costs: LegCosts,
  spares: number,
): number {
  const mean = (leg: number): number => (bikes * reachKm[leg]!) / lifeKm;
  return sumLegs(0, reachKm.length - 1, (leg) => {
    const over = poissonOver(spares, mean(leg)) - poissonOver(spares, mean(leg - 1));
    return over * costs.sudden[leg]! + (mean(leg) - mean(leg - 1) - over) * costs.fixed[leg]!;
  });
}
