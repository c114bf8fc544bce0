import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { laterCost } from '../../src/trade/later-cost.ts';
import { laterLeft } from '../../src/trade/later-left.ts';
import { laterStrand } from '../../src/trade/later-strand.ts';
import { leftShare } from '../../src/trade/left-share.ts';
import { lifeChance } from '../../src/trade/life-chance.ts';
import { limitChance } from '../../src/trade/limit-chance.ts';
import type { PartFigures } from '../../src/trade/part-figures.ts';
import { poissonOver } from '../../src/trade/poisson-over.ts';
import { survival } from '../../src/trade/survival.ts';

/** Everything that the reckoning of the calls starts from, as bare arrays. */
export interface TripFigures {
  readonly parts: number;
  readonly legs: number;
  readonly step: Float64Array;
  readonly recovery: Float64Array;
  readonly waitDays: Float64Array;
  readonly shop: Float64Array;
  readonly column: (name: string) => Float64Array;
  readonly value: (name: string) => number;
}

/** Takes the figures of the default notebook out of its columns, up to but not including the chances. */
export function tripFigures(live: LiveNotebook): TripFigures {
  const read = (node: string): Float64Array => {
    const state = live.read(node);
    if (state.state !== 'settled' || state.column.kind === 'text') throw new Error(`${node} has no figures`);
    return state.column.values;
  };
  const columns = new Map<string, Float64Array>();
  return {
    parts: live.rowsOf('wear'),
    legs: live.rowsOf('route'),
    step: read('ride.step'),
    recovery: read('route.recovery'),
    waitDays: read('route.wait_days'),
    shop: read('route.shop'),
    column: (name) => {
      const held = columns.get(name) ?? read(`wear.${name}`);
      columns.set(name, held);
      return held;
    },
    value: (name) => read(name)[0] as number,
  };
}

/** Leg by leg figures of one part, worked in place. */
interface Ride {
  readonly reach: Float64Array;
  readonly worn: Float64Array;
  readonly whole: Float64Array;
  readonly newWorn: Float64Array;
  readonly newWhole: Float64Array;
  readonly wornCost: Float64Array;
  readonly suddenCost: Float64Array;
  readonly fixedCost: Float64Array;
}

/**
 * The reckoning of the default notebook by hand: chances, later costs, life left, hits and the expected cost
 * of every call for every part, in plain loops over typed arrays with the same trade functions. The yardstick
 * for the notebook's own way through formulas and graph.
 */
export function reckonByHand(trip: TripFigures): Float64Array {
  const expected = new Float64Array(trip.parts * 8);
  for (let part = 0; part < trip.parts; part++)
    reckonPart(trip, part, expected.subarray(part * 8, part * 8 + 8));
  return expected;
}

function figuresOf(trip: TripFigures, part: number, old: boolean): PartFigures {
  const at = (name: string): number => trip.column(name)[part] as number;
  return {
    allowance: at(old ? 'allowance' : 'full_allowance'),
    fullAllowance: at('full_allowance'),
    rate: at('rate'),
    middleLife: at('middle_life'),
    spread: at('spread'),
    readingError: old ? at('gauge_error') : 0,
    age: old ? at('age') : 0,
    life: at('life'),
    shape: at('shape'),
  };
}

function worn(part: PartFigures, reach: number): number {
  if (!Number.isNaN(part.allowance))
    return limitChance(part.allowance, part.rate, part.spread, reach, part.readingError);
  return Number.isNaN(part.middleLife) ? 0 : lifeChance(part.age, reach, part.middleLife, part.spread);
}

const whole = (part: PartFigures, reach: number): number =>
  Number.isNaN(part.life) ? 1 : survival(part.age, reach, part.life, part.shape);

function rideOf(trip: TripFigures, part: number, old: PartFigures, fresh: PartFigures): Ride {
  const { legs } = trip;
  const row = (): Float64Array => new Float64Array(legs);
  const ride: Ride = {
    reach: row(),
    worn: row(),
    whole: row(),
    newWorn: row(),
    newWhole: row(),
    wornCost: row(),
    suddenCost: row(),
    fixedCost: row(),
  };
  const at = (name: string): number => trip.column(name)[part] as number;
  const day = trip.value('day_value') * trip.value('riders_who_wait');
  const roadWork = at('road_hours') * trip.value('hour_value');
  let reach = 0;
  for (let leg = 0; leg < legs; leg++) {
    reach += trip.step[part * legs + leg] as number;
    ride.reach[leg] = reach;
    ride.worn[leg] = worn(old, reach);
    ride.whole[leg] = whole(old, reach);
    ride.newWorn[leg] = worn(fresh, reach);
    ride.newWhole[leg] = whole(fresh, reach);
    const wait = Math.max(trip.waitDays[leg] as number, at('road_lead')) * day + at('road_fitted');
    ride.wornCost[leg] = wait + at('worn_needs') * (trip.recovery[leg] as number);
    ride.suddenCost[leg] = wait + (trip.recovery[leg] as number);
    ride.fixedCost[leg] = roadWork + at('spare_needs') * (trip.recovery[leg] as number);
  }
  return ride;
}

/** Sums over the legs that the calls of one part are made of. */
function reckonPart(trip: TripFigures, part: number, expected: Float64Array): void {
  const at = (name: string): number => trip.column(name)[part] as number;
  const old = figuresOf(trip, part, true);
  const fresh = figuresOf(trip, part, false);
  const ride = rideOf(trip, part, old, fresh);
  const none = laterCost(ride.reach, ride.wornCost, ride.suddenCost, fresh, null);
  const one = laterCost(ride.reach, ride.fixedCost, ride.fixedCost, fresh, none);
  const two = laterCost(ride.reach, ride.fixedCost, ride.fixedCost, fresh, one);
  const back = laterCost(ride.reach, ride.wornCost, ride.suddenCost, old, none);
  const share = laterLeft(ride.reach, fresh, null);
  const oldShare = laterLeft(ride.reach, old, share);
  const ones = new Float64Array(trip.legs).fill(1);
  const useOne = laterCost(ride.reach, ones, ones, fresh, new Float64Array(trip.legs));
  const useTwo = laterCost(ride.reach, ones, ones, fresh, useOne);
  // The recovery chances are part of the notebook's work too.
  const needsNone = laterStrand(
    ride.reach,
    ones.map(() => at('worn_needs')),
    ones,
    fresh,
    null,
  );
  const needsOne = laterStrand(
    ride.reach,
    ones.map(() => at('spare_needs')),
    ones,
    fresh,
    needsNone,
  );
  laterStrand(
    ride.reach,
    ones.map(() => at('spare_needs')),
    ones,
    fresh,
    needsOne,
  );
  laterStrand(
    ride.reach,
    ones.map(() => at('worn_needs')),
    ones,
    old,
    needsNone,
  );
  const sums = sumLegs(trip, part, ride, { none, one, two, back, share, oldShare, useOne, useTwo });
  fillCalls(
    trip,
    part,
    sums,
    expected,
    leftShare(old, ride.reach[trip.legs - 1] as number),
    leftShare(fresh, ride.reach[trip.legs - 1] as number),
  );
}

type Later = Readonly<
  Record<'none' | 'one' | 'two' | 'back' | 'share' | 'oldShare' | 'useOne' | 'useTwo', Float64Array>
>;

interface Sums {
  readonly road: Float64Array;
  readonly share: Float64Array;
  readonly used: Float64Array;
  way: number;
  wayShare: number;
}

function sumLegs(trip: TripFigures, part: number, ride: Ride, later: Later): Sums {
  const at = (name: string): number => trip.column(name)[part] as number;
  const byChance = at('by_chance') === 1;
  const lifeWorth = at('life_worth');
  const sums: Sums = {
    road: new Float64Array(6),
    share: new Float64Array(6),
    used: new Float64Array(4),
    way: Number.NaN,
    wayShare: 0,
  };
  let wayRank = Number.POSITIVE_INFINITY;
  let [wornBefore, wholeBefore, newWornBefore, newWholeBefore] = [at('due_now'), 1, 0, 1];
  let hits = 0;
  const over = [0, 0, 0, 0];
  for (let i = 0; i < trip.legs; i++) {
    const [w, s, nw, ns] = [ride.worn[i], ride.whole[i], ride.newWorn[i], ride.newWhole[i]] as [
      number,
      number,
      number,
      number,
    ];
    const pWorn = ((w - wornBefore) * (s + wholeBefore)) / 2 + (i === 0 ? at('due_now') : 0);
    const pSudden = ((wholeBefore - s) * (1 - w + (1 - wornBefore))) / 2;
    const qWorn = ((nw - newWornBefore) * (ns + newWholeBefore)) / 2;
    const qSudden = ((newWholeBefore - ns) * (1 - nw + (1 - newWornBefore))) / 2;
    [wornBefore, wholeBefore, newWornBefore, newWholeBefore] = [w, s, nw, ns];
    const [p, q] = [pWorn + pSudden, qWorn + qSudden];
    const [none, one, two, back] = [later.none[i], later.one[i], later.two[i], later.back[i]] as [
      number,
      number,
      number,
      number,
    ];
    const [cw, cs, cf] = [ride.wornCost[i], ride.suddenCost[i], ride.fixedCost[i]] as [
      number,
      number,
      number,
    ];
    if (byChance) {
      const now = (at('sharing') * (ride.reach[i] as number)) / at('life');
      for (let k = 0; k < 4; k++) {
        const soFar = poissonOver(k, now);
        const here = soFar - (over[k] as number);
        over[k] = soFar;
        const cost = here * cs + (now - hits - here) * cf;
        const call = k === 0 ? [0, 1] : k === 1 ? [2, 5] : k === 2 ? [3] : [4];
        for (const c of call) sums.road[c] = (sums.road[c] as number) + cost;
      }
      hits = now;
    } else {
      add(sums.road, 0, pWorn * (cw + none) + pSudden * (cs + none));
      add(sums.road, 1, qWorn * (cw + none) + qSudden * (cs + none));
      add(sums.road, 2, p * (cf + none));
      add(sums.road, 3, p * (cf + one));
      add(sums.road, 4, p * (cf + two));
      add(sums.road, 5, q * (cf + back));
    }
    const share = later.share[i] as number;
    for (const c of [0, 2, 3, 4]) add(sums.share, c, p * share);
    add(sums.share, 1, q * share);
    add(sums.share, 5, q * (later.oldShare[i] as number));
    add(sums.used, 1, p);
    add(sums.used, 2, p * (1 + (later.useOne[i] as number)));
    add(sums.used, 3, p * (1 + (later.useTwo[i] as number)));
    const still = (1 - w) * s;
    const cost = (sums.road[0] as number) + still * (at('road_fitted') + none);
    const left = (sums.share[0] as number) + still * share;
    if (trip.shop[i] === 1 && i < trip.legs - 1 && cost - left * lifeWorth < wayRank) {
      wayRank = cost - left * lifeWorth;
      sums.way = cost;
      sums.wayShare = left;
    }
  }
  return sums;
}

function add(sums: Float64Array, at: number, amount: number): void {
  sums[at] = (sums[at] as number) + amount;
}

/** leave, replace, carry 1 to 3, replace and keep old, change on the way, send out. */
function fillCalls(
  trip: TripFigures,
  part: number,
  sums: Sums,
  expected: Float64Array,
  leftEnd: number,
  newLeftEnd: number,
): void {
  const at = (name: string): number => trip.column(name)[part] as number;
  const [home, landed, held] = [at('home_price'), at('landed_price'), at('spares_held')];
  const shelf = home * trip.value('shelf_share');
  const oldWorth = trip.value('keep_old_at_home') === 1 ? at('left_now') * home * trip.value('old_share') : 0;
  const labour = at('shed_hours') * trip.value('hour_value');
  const hitsEnd = at('by_chance') === 1 ? at('hits_end') : Number.NaN;
  for (let call = 0; call < 7; call++) {
    const spares = call >= 2 && call <= 4 ? call - 1 : 0;
    const fits = call === 1 || call === 5;
    const need = fits ? 1 : spares;
    const cash = Math.max(0, need - held) > 0 ? Math.max(0, need - held) * landed : 0;
    const share = call === 6 ? sums.wayShare : (fits ? newLeftEnd : leftEnd) + (sums.share[call] as number);
    const used = Number.isNaN(hitsEnd)
      ? (sums.used[spares] as number)
      : hitsEnd - poissonOver(spares, hitsEnd);
    const left = share * at('life_worth') + (spares - used) * shelf + (fits ? oldWorth : 0);
    const road = call === 6 ? sums.way : (sums.road[call] as number);
    expected[call] = cash + Math.min(need, held) * shelf + (fits ? labour : 0) + road - left;
    // A workshop fits a new one: as replace, with its price for the cash, the shelf and the labour.
    if (call === 1) expected[7] = at('sent_price') + road - left;
  }
}
