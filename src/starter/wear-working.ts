import type { WorkedColumn } from '../notebook/document.ts';
import { worked } from './columns.ts';

const PLAIN_4 = { decimals: 4 } as const;
const MONEY = { unit: 'EUR', decimals: 2 } as const;

/** The worked columns of wear that stay in sight. */
export function shownWear(): WorkedColumn[] {
  return [
    worked('rate', 'or_else(rate_likely, sqrt(rate_low * rate_high))', {
      title: 'Rate',
      unit: '1/(1000 km)',
    }),
    worked('end_reading', 'now + direction * rate * reach_end', { title: 'At trip’s end', decimals: 2 }),
    worked(
      'share_end',
      'min(1, max(0, or_else(1 - (allowance - rate * reach_end) / full_allowance, aged_end)))',
      {
        title: 'Life used',
        decimals: 2,
        draw: 'share',
      },
    ),
    worked(
      'limit_leg',
      'due ? "before the start" : or_else(pick(route.leg, route.leg_number, limit_leg_number), "no")',
      {
        title: 'Reaches its limit',
      },
    ),
    worked('gives_up', '1 - least_of(ride.still_fit, ride.part, part)', {
      title: 'Gives up if left',
      decimals: 3,
    }),
    worked('landed_price', 'least_of(prices.landed_in_time, prices.fits, part)', {
      title: 'Landed price',
      ...MONEY,
    }),
    worked(
      'guard',
      'unknown ? "not enough known" : over_by > 0 ? "no call meets the limit" : due ? "due now" : over_limit ? "held back" : ""',
      { title: 'Watch' },
    ),
    worked('limit_missed_by', 'over_by > 0 ? over_by : missing', { title: 'Misses it by', decimals: 3 }),
  ];
}

/** Allowance, rate and spread: section 2 of the method. */
function gradualWear(): WorkedColumn[] {
  return [
    worked('direction', 'sign(limit - new_reading)', { title: 'Wears up or down', decimals: 0 }),
    worked('allowance', 'direction * (limit - now)', { title: 'Allowance' }),
    worked('full_allowance', 'abs(limit - new_reading)', { title: 'Allowance when new' }),
    worked('gauge_error', 'or_else(reading_error, 0)', { title: 'Error used' }),
    worked('due', 'or_else(allowance <= 0, false)', { title: 'Due before the start' }),
    worked('middle_life', 'or_else(life_likely, sqrt(life_low * life_high))', {
      title: 'Middle life',
      unit: 'km',
      decimals: 0,
    }),
    worked('given_spread', 'or_else(spread_from(rate_low, rate_high), spread_from(life_low, life_high))', {
      title: 'Spread given',
      ...PLAIN_4,
    }),
    worked('own_spread', 'or_else(given_spread, spread_from_cv(usual_variation))', {
      title: 'Own spread',
      ...PLAIN_4,
    }),
    worked('spread', 'sqrt(own_spread ^ 2 + riding_spread ^ 2)', { title: 'Spread', ...PLAIN_4 }),
    worked('few_readings', 'or_else(rate_readings, 0) < enough_readings', { title: 'Few readings' }),
    worked('judged_spread', 'few_readings ? sqrt(spread ^ 2 + trip_spread ^ 2) : spread', {
      title: 'Spread, judged',
      ...PLAIN_4,
    }),
    worked('load', 'pick(wear_classes.load_factor, wear_classes.wear_class, wear_class)', {
      title: 'Load factor',
      decimals: 2,
    }),
    worked('reach_end', 'most_of(ride.reach, ride.part, part)', {
      title: 'Reach of the trip',
      unit: 'km',
      decimals: 0,
    }),
    worked('mean_reading', 'now + direction * rate * reach_end * exp(spread ^ 2 / 2)', {
      title: 'Mean at its end',
      decimals: 2,
    }),
    worked('least_worn', 'now + direction * rate * reach_end * exp(-1.2815515655446004 * spread)', {
      title: '10% wear less',
      decimals: 2,
    }),
    worked('most_worn', 'now + direction * rate * reach_end * exp(1.2815515655446004 * spread)', {
      title: '10% wear more',
      decimals: 2,
    }),
    worked('due_now', 'has_reading ? limit_chance(allowance, rate, spread, 0 km, gauge_error) : 0', {
      title: 'Due now, chance',
      decimals: 3,
    }),
    worked('limit_leg_number', 'least_of(ride.limit_leg_here, ride.part, part)', {
      title: 'Limit on leg no.',
      decimals: 0,
    }),
  ];
}

/** What is known of a part; an empty field never counts as a part that lasts for ever. */
function known(): WorkedColumn[] {
  return [
    worked('has_reading', 'not (is_missing(now) and is_missing(limit) and is_missing(new_reading))', {
      title: 'Has a reading',
    }),
    worked('has_life', 'not (is_missing(life_low) and is_missing(life_high) and is_missing(life_likely))', {
      title: 'Has a life',
    }),
    worked('has_sudden', 'not (is_missing(sudden_life) and is_missing(rating_life) and is_missing(shape))', {
      title: 'Can fail suddenly',
    }),
    worked('some_known', 'has_reading or has_life or has_sudden', { title: 'Anything known' }),
    worked('legs_told', 'count_of(ride.leg_told, ride.part, part)', { title: 'Legs told', decimals: 0 }),
    worked('unknown', 'is_missing(judged) or legs_told < count_of(ride.part, ride.part, part)', {
      title: 'Not enough known',
    }),
    worked('counts_critical', 'or_else(critical, true)', { title: 'Counts as critical' }),
    worked('spares_held', 'or_else(on_hand, 0)', { title: 'Spares held', decimals: 0 }),
    worked('sharing', 'or_else(bikes, 1)', { title: 'Bikes counted', decimals: 0 }),
  ];
}

/** Lives: sudden failure, random hits and how much of a life is gone: section 3. */
function lives(): WorkedColumn[] {
  return [
    worked('life', 'or_else(sudden_life, life_from_rating(rating_life, shape))', {
      title: 'Characteristic life',
      unit: 'km',
      decimals: 0,
    }),
    worked('by_chance', 'has_sudden and or_else(shape == 1, false) and not has_reading and not has_life', {
      title: 'By chance alone',
    }),
    worked('share_now', 'min(1, max(0, or_else(1 - allowance / full_allowance, aged_now)))', {
      title: 'Life used now',
      decimals: 2,
      draw: 'share',
    }),
    worked('aged_now', 'or_else(age / middle_life, shape > 1 ? age / life : missing)', {
      title: 'Age, share now',
      decimals: 2,
    }),
    worked(
      'aged_end',
      'or_else((age + reach_end) / middle_life, shape > 1 ? (age + reach_end) / life : missing)',
      {
        title: 'Age, share at its end',
        decimals: 2,
      },
    ),
    worked('shares', 'sharing > 1 and not by_chance', { title: 'One on each bike' }),
    worked('copies', 'shares ? sharing : missing', { title: 'Like ones, all bikes', decimals: 0 }),
    worked('fitted', 'shares ? sharing : 1', { title: 'Fitted, all bikes', decimals: 0 }),
    worked('hits_end', 'by_chance ? sharing * reach_end / life : missing', {
      title: 'Hits expected',
      decimals: 3,
    }),
    worked(
      'left_now',
      'left_share(0 km, allowance, full_allowance, rate, middle_life, spread, gauge_error, age, life, shape)',
      {
        title: 'Left now',
        decimals: 3,
      },
    ),
    worked(
      'left_end',
      'left_share(reach_end, allowance, full_allowance, rate, middle_life, spread, gauge_error, age, life, shape)',
      {
        title: 'Left at its end',
        decimals: 3,
      },
    ),
    worked(
      'new_left_end',
      'left_share(reach_end, full_allowance, full_allowance, rate, middle_life, spread, 0, 0 km, life, shape)',
      {
        title: 'New one, left at its end',
        decimals: 3,
      },
    ),
  ];
}

/** The chances by which a critical part is judged: section 8. */
function judgement(): WorkedColumn[] {
  return [
    worked('judged_wear', 'most_of(ride.judged_worn, ride.part, part)', {
      title: 'Worn out, judged',
      decimals: 3,
    }),
    worked('judged_sudden', '1 - least_of(ride.whole, ride.part, part)', {
      title: 'Sudden, judged',
      decimals: 3,
    }),
    worked('judged', 'most_of(ride.judged_gone, ride.part, part)', {
      title: 'Gives up, judged',
      decimals: 3,
    }),
    worked(
      'new_judged_wear',
      'has_reading ? limit_chance(full_allowance, rate, judged_spread, reach_end) : new_judged_age',
      { title: 'New one worn, judged', decimals: 3 },
    ),
    worked('new_judged_age', 'has_life ? life_chance(0 km, reach_end, middle_life, judged_spread) : 0', {
      title: 'New one by age, judged',
      decimals: 3,
    }),
    worked(
      'new_judged',
      '1 - (1 - new_judged_wear) * (has_sudden ? survival(0 km, reach_end, life, shape) : 1)',
      {
        title: 'New one gives up, judged',
        decimals: 3,
      },
    ),
    worked('over_limit', 'counts_critical and judged > risk_limit', { title: 'Over the risk limit' }),
    worked('new_over', 'counts_critical and new_judged > risk_limit', { title: 'New one over it too' }),
    worked('first_over', 'least_of(ride.over_leg, ride.part, part)', {
      title: 'Over it from leg no.',
      decimals: 0,
    }),
    worked('wear_alone', 'judged_wear > risk_limit and judged_sudden <= risk_limit', {
      title: 'By wear alone',
    }),
    worked('can_be_watched', 'wear_alone and or_else(wear_shows and roadside and first_over > 1, false)', {
      title: 'Can be watched',
    }),
    worked('check_leg_number', 'over_limit and can_be_watched ? first_over - 1 : missing', {
      title: 'Check after leg no.',
      decimals: 0,
    }),
    worked('check_at', 'or_else(pick(route.end_place, route.leg_number, check_leg_number), "")', {
      title: 'Check at',
    }),
    worked('over_by', 'least_of(calls.over_by_call, calls.part, part)', {
      title: 'Over by, at best',
      decimals: 3,
    }),
  ];
}

/** What the part costs at home and on the road, and what a life of it is worth: sections 5 and 6. */
function worth(): WorkedColumn[] {
  return [
    worked('home_price', 'least_of(prices.net_each, prices.fits, part)', {
      title: 'Price at home',
      ...MONEY,
    }),
    worked('price_key', 'count_of(prices.best_here, prices.fits, part) > 0 ? part : missing', {
      title: 'Key to prices',
    }),
    worked('from_supplier', 'pick(prices.supplier, prices.fits, price_key, prices.best_here, true)', {
      title: 'Cheapest in time from',
    }),
    worked('arrives', 'pick(prices.lead, prices.fits, price_key, prices.best_here, true)', {
      title: 'Arrives in',
      unit: 'days',
      decimals: 0,
    }),
    worked('road_price', 'or_else(landed_price, home_price) * (1 + road_markup)', {
      title: 'Price on the road',
      ...MONEY,
    }),
    worked('road_fitted', 'road_price + road_hours * hour_value', {
      title: 'Bought and fitted there',
      ...MONEY,
    }),
    worked('sent_price', 'least_of(works.work_price, works.part, part)', {
      title: 'At a workshop',
      ...MONEY,
    }),
    worked('labour', 'shed_hours * hour_value', { title: 'Labour in the shed', ...MONEY }),
    worked('labour_worth', 'credit_labour ? labour : 0 EUR', {
      title: 'Labour put off',
      ...MONEY,
    }),
    worked('life_worth', 'home_price + labour_worth', { title: 'Worth of a whole life', ...MONEY }),
    worked('worn_needs', 'or_else(worn_strands, false) ? 1 : 0', { title: 'Recovery if worn', decimals: 0 }),
    worked('spare_needs', 'or_else(roadside, false) ? 0 : 1', {
      title: 'Recovery with a spare',
      decimals: 0,
    }),
    worked('way_key', 'count_of(ride.change_here, ride.part, part) > 0 ? part : missing', {
      title: 'Key to the change',
    }),
    worked('change_at', 'or_else(pick(ride.end_place, ride.part, way_key, ride.change_here, true), "")', {
      title: 'Best place to change it',
    }),
  ];
}

/** What comes off for the part, what that takes, and where its spare rather goes. */
function handling(): WorkedColumn[] {
  return [
    worked('stow_key', 'count_of(handling.part, handling.part, part) > 0 ? part : missing', {
      title: 'Key to handling',
    }),
    worked('opens', 'pick(handling.opens, handling.part, stow_key)', { title: 'Comes off' }),
    worked('rather_in', 'pick(handling.bag, handling.part, stow_key)', { title: 'Rather in' }),
    worked('job_key', 'count_of(jobs.job, jobs.job, opens) > 0 ? opens : missing', {
      title: 'Key to what comes off',
    }),
    worked('setup', 'or_else(pick(jobs.setup, jobs.job, job_key), 0 h)', {
      title: 'Off and on again',
      unit: 'h',
      decimals: 2,
    }),
  ];
}

/** Sentences that ask the reader to look again at what was entered. */
function notices(): WorkedColumn[] {
  return [
    worked('rate_outside', 'or_else(rate_likely < rate_low or rate_likely > rate_high, false)', {
      title: 'Rate outside',
    }),
    worked('rate_off_middle', 'or_else(abs(rate_likely / sqrt(rate_low * rate_high) - 1) > 0.1, false)', {
      title: 'Rate off the middle',
    }),
    worked('counts_twice', 'or_else(shape > 1, false) and not is_missing(allowance)', {
      title: 'Wear counted twice?',
    }),
    worked(
      'rate_notice',
      'rate_outside ? "Likely rate is not between low and high." : rate_off_middle ? "Likely rate is over 10% off the middle." : ""',
      {
        title: 'About the rate',
      },
    ),
    worked(
      'life_notice',
      'counts_twice ? "The sudden life must not count the wear that the reading shows." : ""',
      { title: 'About the life' },
    ),
  ];
}

/** All folded working of the wear table. */
export function wearWorking(): WorkedColumn[] {
  return [...known(), ...gradualWear(), ...lives(), ...judgement(), ...worth(), ...handling(), ...notices()];
}
