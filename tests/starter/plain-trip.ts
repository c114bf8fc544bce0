import { readFileSync } from 'node:fs';
import Papa from 'papaparse';
import {
  hitCost,
  type LegCosts,
  leftShare,
  type PlainPart,
  poissonOver,
  roadOf,
  stillFit,
  suddenSurvival,
  wearChance,
} from './plain-model.ts';

/** One row of a file, by the name in front of the unit. */
export type PlainRow = Readonly<Record<string, string>>;

export function rowsOf(file: string): PlainRow[] {
  const text = readFileSync(new URL(`../../datasets/plateau-loop/${file}`, import.meta.url), 'utf8');
  const [head, ...rows] = Papa.parse<string[]>(text, { header: false, skipEmptyLines: true }).data;
  const names = head!.map((cell) => cell.replace(/ \(.*\)$/, ''));
  return rows.map((row) => Object.fromEntries(names.map((name, k) => [name, row[k] ?? ''])));
}

const number = (text: string | undefined): number | null =>
  text === undefined || text === '' ? null : Number(text);
const yes = (text: string | undefined): boolean => text === 'yes';

/** Values of the trip by name, in the units of the notebook. */
export type PlainValues = Readonly<Record<string, number | boolean>>;

const TENTH = 1.2815515655446004; // R 4.2.2 stats::qnorm(0.9)

const middle = (row: PlainRow, likely: string, low: string, high: string): number | null => {
  const given = number(row[likely]);
  if (given !== null) return given;
  const [l, h] = [number(row[low]), number(row[high])];
  return l === null || h === null ? null : Math.sqrt(l * h);
};

export function spreadOf(row: PlainRow, values: PlainValues): number {
  const low = number(row.rate_low) ?? number(row.life_low);
  const high = number(row.rate_high) ?? number(row.life_high);
  const own =
    low === null || high === null
      ? Math.sqrt(Math.log(1 + Number(values.usual_variation) ** 2))
      : Math.log(high / low) / (2 * TENTH);
  return Math.hypot(own, Number(values.riding_spread));
}

export function partOf(row: PlainRow, values: PlainValues): PlainPart {
  const [fresh, limit, now] = [number(row.new_reading), number(row.limit), number(row.now)];
  const towards = fresh === null ? 0 : Math.sign(limit! - fresh);
  const shape = number(row.shape);
  const rating = number(row.rating_life);
  return {
    allowance: now === null ? null : towards * (limit! - now),
    fullAllowance: fresh === null ? null : Math.abs(limit! - fresh),
    rate: middle(row, 'rate_likely', 'rate_low', 'rate_high'),
    middleLifeKm: middle(row, 'life_likely', 'life_low', 'life_high'),
    spread: spreadOf(row, values),
    readingError: number(row.reading_error) ?? 0,
    ageKm: number(row.age)!,
    lifeKm: number(row.sudden_life) ?? (rating === null ? null : rating / (-Math.log(0.9)) ** (1 / shape!)),
    shape,
  };
}

/** Reach at the end of each leg for a wear class; index 0 is the start. */
export function reachOf(wearClass: string, values: PlainValues): number[] {
  const severity = new Map(
    rowsOf('severity.csv').map((row) => [`${row.wear_class}|${row.surface}`, Number(row.factor)]),
  );
  const power = Number(rowsOf('wear_classes.csv').find((row) => row.wear_class === wearClass)!.load_power);
  const reach = [0];
  for (const leg of rowsOf('route.csv')) {
    const share = number(leg.second_share) ?? 0;
    const first = severity.get(`${wearClass}|${leg.surface}`)!;
    const second = share === 0 ? 0 : severity.get(`${wearClass}|${leg.second_surface}`)!;
    const times = (1 - share) * first + share * second;
    reach.push(reach.at(-1)! + Number(leg.distance) * times * Number(values.load_ratio) ** power);
  }
  return reach;
}

/** Cheapest piece with freight that comes in time, and cheapest without freight, in the notebook's money. */
export function pricesOf(part: string, values: PlainValues, daysLeft: number) {
  const worth = new Map(rowsOf('rates_of_exchange.csv').map((row) => [row.currency, Number(row.worth)]));
  const fits = new Map(rowsOf('matches.csv').map((row) => [`${row.supplier}|${row.offer}`, row.fits]));
  const heads: Record<
    string,
    [file: string, offer: string, pack: string, price: string, off: string, tax: string, days: string]
  > = {
    'Northgate Spares': [
      'prices-northgate-spares.csv',
      'Art. no.',
      'Per pack',
      'Price',
      'Rebate',
      '',
      'Ships in',
    ],
    'Quayside Moto': ['prices-quayside-moto.csv', 'Code', 'Qty in pack', 'Net price', '', 'VAT', 'Delivery'],
    'Dray & Daughter': [
      'prices-dray-and-daughter.csv',
      'Part no',
      'Pack',
      'List',
      'Trade discount',
      '',
      'Lead time',
    ],
    'Anvil Lane Workshop': ['prices-anvil-lane.csv', 'Job no.', '', 'Price', '', '', 'Back in'],
  };
  let home = Infinity;
  let landed = Infinity;
  for (const supplier of rowsOf('suppliers.csv')) {
    const [file, offer, pack, price, off, tax, days] = heads[supplier.supplier!]!;
    const order = Number(supplier.usual_order);
    const free = number(supplier.free_freight_from);
    const freight = free !== null && order >= free ? 0 : Number(supplier.freight) / order;
    for (const row of rowsOf(file)) {
      if (fits.get(`${supplier.supplier}|${row[offer]}`) !== part) continue;
      const taxed = 1 + (number(row[tax]) === null ? Number(supplier.usual_tax) : Number(row[tax]) / 100);
      const discounted = 1 - (number(row[off]) ?? 0) / 100;
      const each =
        (Number(row[price]) * discounted * taxed * worth.get(supplier.currency)!) / Number(row[pack] ?? 1);
      home = Math.min(home, each);
      const lead = number(row[days]) ?? Number(supplier.lead_time);
      if (lead + Number(values.arrival_margin) <= daysLeft) landed = Math.min(landed, each * (1 + freight));
    }
  }
  return { home, landed };
}

/** What a failure of the part costs on each leg, section 5. */
export function legCostsOf(row: PlainRow, values: PlainValues, daysLeft: number): LegCosts {
  const v = (name: string): number => Number(values[name]);
  const reach = reachOf(row.wear_class!, values);
  const { landed } = pricesOf(row.part!, values, daysLeft);
  const route = rowsOf('route.csv');
  const roadHours = Number(row.road_hours);
  const planned = landed * (1 + v('road_markup')) + roadHours * v('hour_value');
  const recovery = (leg: number): number =>
    v('recovery_call_out') + Number(route[leg - 1]!.help_distance) * v('recovery_per_km');
  const wait = (leg: number): number =>
    Math.max(Number(route[leg - 1]!.wait_days), Number(row.road_lead)) *
    v('day_value') *
    v('riders_who_wait');
  const byLeg = (of: (leg: number) => number): number[] =>
    reach.map((_, leg) => (leg === 0 ? Number.NaN : of(leg)));
  return {
    worn: byLeg((leg) => wait(leg) + planned + (yes(row.worn_strands) ? recovery(leg) : 0)),
    sudden: byLeg((leg) => wait(leg) + planned + recovery(leg)),
    fixed: byLeg((leg) => roadHours * v('hour_value') + (yes(row.roadside) ? 0 : recovery(leg))),
    planned,
  };
}

/** Expected cost, road cost and share left of every call of one part, by the plain loops. */
export function callsOf(row: PlainRow, values: PlainValues, daysLeft: number) {
  const v = (name: string): number => Number(values[name]);
  const part = partOf(row, values);
  const reach = reachOf(row.wear_class!, values);
  const legs = reach.length - 1;
  const { home, landed } = pricesOf(row.part!, values, daysLeft);
  const costs = legCostsOf(row, values, daysLeft);
  const road = roadOf(part, reach, costs);
  const byChance = part.shape === 1 && part.allowance === null && part.middleLifeKm === null;
  const hits = (spares: number): number => hitCost(part.lifeKm!, Number(row.bikes), reach, costs, spares);
  const mean = byChance ? (Number(row.bikes) * reach[legs]!) / part.lifeKm! : 0;
  const onHand = Number(row.on_hand);
  const lifeWorth = home + (values.credit_labour ? Number(row.shed_hours) * v('hour_value') : 0);
  const oldWorth = values.keep_old_at_home ? home * v('old_share') * leftShare(part, 0) : 0;
  const total = (need: number, hours: number, onRoad: number, share: number, unused: number, old: number) => {
    const cash = Math.max(0, need - onHand) * landed;
    const shelf = Math.min(need, onHand) * home * v('shelf_share');
    const leftOver = share * lifeWorth + unused * home * v('shelf_share') + old;
    return { cash, onRoad, leftOver, expected: cash + shelf + hours * v('hour_value') + onRoad - leftOver };
  };
  const shed = Number(row.shed_hours);
  const unused = (spares: number): number =>
    byChance ? spares - mean + poissonOver(spares, mean) : spares - road.used[spares - 1]!;
  const carry = (spares: number) =>
    total(spares, 0, byChance ? hits(spares) : road.carry[spares - 1]!, road.shareLeave, unused(spares), 0);
  const calls: Record<string, ReturnType<typeof total>> = {
    leave: total(0, 0, byChance ? hits(0) : road.leave, road.shareLeave, 0, 0),
    replace: total(1, shed, byChance ? hits(0) : road.replace, road.shareReplace, 0, oldWorth),
    'carry 1': carry(1),
    'carry 2': carry(2),
    'carry 3': carry(3),
    'replace and keep old': total(1, shed, byChance ? hits(1) : road.keep, road.shareKeep, 0, oldWorth),
  };
  const work = rowsOf('works.csv').find((one) => one.part === row.part)?.work;
  const sent = work === undefined ? Infinity : pricesOf(work, values, daysLeft).landed;
  if (Number.isFinite(sent)) {
    const { onRoad, leftOver } = calls.replace!;
    calls['send out'] = { cash: sent, onRoad, leftOver, expected: sent + onRoad - leftOver };
  }
  const change = (leg: number) => total(0, 0, road.change(leg), road.shareChange(leg), 0, 0);
  return {
    part,
    reach,
    calls,
    change,
    byChance,
    chances: {
      gone: 1 - stillFit(part, reach[legs]!),
      worn: wearChance(part, reach[legs]!),
      sudden: 1 - suddenSurvival(part, reach[legs]!),
    },
    home,
    landed,
    road,
  };
}
