import type { CallsCell, PairingCell, PlanCell, TableCell, WorkedColumn } from '../notebook/document.ts';
import { choicesTable, reasonsTable } from './choices-cells.ts';
import { folded, worked } from './columns.ts';
import { planCell } from './plan-cells.ts';

const MONEY = { unit: 'EUR', decimals: 2 } as const;
const CHANCE = { decimals: 4 } as const;

/** What the call costs, in the order of the sum. */
function costs(): WorkedColumn[] {
  return [
    worked('cash', 'sent_out > 0 ? works_sent * sent_price : bought > 0 ? bought * landed_price : 0 EUR', {
      title: 'Cash',
      ...MONEY,
    }),
    worked('pack_kg', 'packed * mass', { title: 'Pack', unit: 'kg', decimals: 2 }),
    worked('pack_L', 'packed * volume', { title: 'Pack', unit: 'L', decimals: 2 }),
    worked('hours', 'fits_new and sent_out == 0 ? fitted * shed_hours : 0 h', {
      title: 'Shed',
      unit: 'h',
      decimals: 2,
    }),
    worked('on_road', 'fits_new ? fitted * road_new : spares > 0 ? road_carried : fitted * road_old', {
      title: 'On the road',
      ...MONEY,
    }),
    worked('left_over', 'fitted * share_left * life_worth + unused * home_price * shelf_share + old_worth', {
      title: 'Left over',
      ...MONEY,
    }),
    worked('expected', 'cash + from_shelf + hours * hour_value + on_road - left_over', {
      title: 'Expected cost',
      ...MONEY,
    }),
    worked('allowed', 'bar == ""', { title: 'Allowed' }),
    worked(
      'strand',
      'by_chance ? strand_hits : spares > 0 ? strand_carried : shares ? 1 - (1 - strand_each) ^ fitted : strand_each',
      {
        title: 'Needs a recovery',
        ...CHANCE,
      },
    ),
    worked('chosen', 'or_else(pick(decision.call, decision.part, part) == call, false)', { title: 'Chosen' }),
    worked('why_not', 'bar == "" ? "" : pick(reasons.sentence, reasons.reason, bar)', { title: 'Why not' }),
  ];
}

/** Pieces bought, taken from the shelf and packed. */
function pieces(): WorkedColumn[] {
  return [
    worked('needed', 'fits_new ? fitted * need : need', { title: 'New pieces, all bikes', decimals: 0 }),
    worked('works_sent', 'sent_out * fitted', { title: 'Sent to a workshop, all', decimals: 0 }),
    worked('bought', 'max(0, needed - spares_held)', { title: 'Bought', decimals: 0 }),
    worked('from_shelf', 'min(needed, spares_held) * home_price * shelf_share', {
      title: 'From the shelf',
      ...MONEY,
    }),
    worked('packed', 'spares + (keeps_old ? fitted : 0)', { title: 'Packed', decimals: 0 }),
    worked('opens_it', 'or_else(chosen and hours > 0 h and setup > 0 h and setup <= hours, false)', {
      title: 'Opens its job',
    }),
    worked('bag_now', 'chosen ? pick(handling.packed_in, handling.part, stow_key) : missing', {
      title: 'In the bag',
    }),
    worked('chosen_kg', 'chosen ? pack_kg : 0 kg', { title: 'Packed', unit: 'kg', decimals: 2 }),
    worked('chosen_L', 'chosen ? pack_L : 0 L', { title: 'Packed', unit: 'L', decimals: 2 }),
    worked(
      'old_worth',
      'fits_new and keep_old_at_home ? fitted * left_now * home_price * old_share : 0 EUR',
      {
        title: 'Old one’s worth',
        ...MONEY,
      },
    ),
  ];
}

/** Expected cost on the road by kind of call. */
function road(): WorkedColumn[] {
  return [
    worked(
      'road_old',
      'on_the_way ? pick(ride.change_cost, ride.part, way_key, ride.change_here, true) : total(ride.leave_cost, ride.part, part)',
      {
        title: 'Road, old one on',
        ...MONEY,
      },
    ),
    worked(
      'road_new',
      'keeps_old ? total(ride.keep_cost, ride.part, part) : total(ride.replace_cost, ride.part, part)',
      {
        title: 'Road, new one on',
        ...MONEY,
      },
    ),
    worked('road_carried', 'spares == 1 ? total(ride.carry_1_cost, ride.part, part) : road_more', {
      title: 'Road, spares packed',
      ...MONEY,
    }),
    worked(
      'road_more',
      'spares == 2 ? total(ride.carry_2_cost, ride.part, part) : total(ride.carry_3_cost, ride.part, part)',
      {
        title: 'Road, two or three',
        ...MONEY,
      },
    ),
  ];
}

/** Life left in what is fitted at the end, and spares that come home unused. */
function leftovers(): WorkedColumn[] {
  return [
    worked(
      'share_left',
      'fits_new ? new_left_end + share_new : on_the_way ? share_way : left_end + share_old',
      { title: 'Life left, share', ...CHANCE },
    ),
    worked('share_old', 'total(ride.leave_share, ride.part, part)', { title: 'In its followers', ...CHANCE }),
    worked(
      'share_new',
      'keeps_old ? total(ride.keep_share, ride.part, part) : total(ride.replace_share, ride.part, part)',
      {
        title: 'After a new one',
        ...CHANCE,
      },
    ),
    worked('share_way', 'pick(ride.change_share, ride.part, way_key, ride.change_here, true)', {
      title: 'Changed on the way',
      ...CHANCE,
    }),
    worked('unused', 'spares - (by_chance ? used_hits : used)', { title: 'Spares unused', decimals: 3 }),
    worked('used_hits', 'hits_end - poisson_over(spares, hits_end)', {
      title: 'Spares used, hits',
      decimals: 3,
    }),
    worked('used', 'spares == 0 ? 0 : spares == 1 ? total(ride.used_of_1, ride.part, part) : used_more', {
      title: 'Spares used',
      decimals: 3,
    }),
    worked(
      'used_more',
      'spares == 2 ? total(ride.used_of_2, ride.part, part) : total(ride.used_of_3, ride.part, part)',
      {
        title: 'Used, of two or three',
        decimals: 3,
      },
    ),
  ];
}

/** Chance that this call ends in at least one recovery. */
function strandings(): WorkedColumn[] {
  return [
    worked('strand_each', 'fits_new ? strand_new : strand_old', { title: 'On one bike', ...CHANCE }),
    worked('strand_hits', 'poisson_more(spare_needs == 0 ? packed : 0, hits_end)', {
      title: 'By hits',
      ...CHANCE,
    }),
    worked(
      'strand_old',
      'on_the_way ? pick(ride.change_needs, ride.part, way_key, ride.change_here, true) : total(ride.leave_needs, ride.part, part)',
      {
        title: 'Old one on',
        ...CHANCE,
      },
    ),
    worked(
      'strand_new',
      'keeps_old ? total(ride.keep_needs, ride.part, part) : total(ride.replace_needs, ride.part, part)',
      {
        title: 'New one on',
        ...CHANCE,
      },
    ),
    worked('strand_carried', 'spares == 1 ? total(ride.carry_1_needs, ride.part, part) : strand_more', {
      title: 'Spares packed',
      ...CHANCE,
    }),
    worked(
      'strand_more',
      'spares == 2 ? total(ride.carry_2_needs, ride.part, part) : total(ride.carry_3_needs, ride.part, part)',
      {
        title: 'Two or three packed',
        ...CHANCE,
      },
    ),
  ];
}

/** Safety comes before cost: what bars a call, the gravest reason first (section 8). */
function bars(): WorkedColumn[] {
  return [
    worked('bar', 'unknown ? "unknown" : bars_due ? "due" : bars_old ? "held back" : bar_new', {
      title: 'Barred by',
    }),
    worked('bar_new', 'bars_new ? "new one too" : bars_keep ? "no spare" : bars_pack ? "too big" : bar_way', {
      title: 'Barred as new or spare by',
    }),
    worked(
      'bar_way',
      'not on_the_way ? bar_sent : by_chance ? "by chance" : bars_watch ? "not watched" : is_missing(way_key) ? "no stop" : ""',
      {
        title: 'Barred on the way by',
      },
    ),
    worked('bar_sent', 'sent_out > 0 and is_missing(sent_price) ? "no workshop" : ""', {
      title: 'Barred, sent out',
    }),
    worked('bars_due', 'due and (not fits_new or keeps_old)', { title: 'Due' }),
    worked('may_carry', 'spares > 0 and can_be_watched and not new_over', { title: 'May be carried for' }),
    worked('bars_old', 'over_limit and not fits_new and not on_the_way and not may_carry', {
      title: 'Held back',
    }),
    worked('bars_new', 'new_over and fits_new', { title: 'New one over' }),
    worked('bars_watch', 'over_limit and not can_be_watched and not new_over', {
      title: 'Not to be watched',
    }),
    worked('bars_keep', 'keeps_old and not or_else(old_usable, false)', { title: 'Old one no use' }),
    worked('bars_pack', 'or_else(pack_kg > pack_mass_limit or pack_L > pack_volume_limit, false)', {
      title: 'Too big',
    }),
    worked('way_risk', 'least_of(ride.stop_risk, ride.part, part)', {
      title: 'Least risk on the way',
      ...CHANCE,
    }),
    worked('risk', 'fits_new ? new_judged : on_the_way ? or_else(way_risk, 1) : judged', {
      title: 'Risk between changes',
      ...CHANCE,
    }),
    worked('over_by_call', 'counts_critical ? max(0, risk - risk_limit) : 0', {
      title: 'Over the limit by',
      ...CHANCE,
    }),
    worked('way_judged', 'pick(ride.change_judged, ride.part, way_key, ride.change_here, true)', {
      title: 'Gives up, changed',
      ...CHANCE,
    }),
    worked('gives_up_one', 'fits_new ? new_judged : on_the_way ? way_judged : judged', {
      title: 'Gives up, on one bike',
      ...CHANCE,
    }),
    worked('gives_up_judged', 'shares ? 1 - (1 - gives_up_one) ^ fitted : gives_up_one', {
      title: 'Gives up',
      ...CHANCE,
    }),
  ];
}

function callsPairing(): PairingCell {
  return {
    id: 'calls',
    kind: 'pairing',
    name: 'calls',
    title: 'What each call costs',
    gist: 'every part with every possible call',
    source: 'Expected cost = cash + shelf + shed hours + cost on the road - what is left over.',
    left: 'wear',
    right: 'choices',
    columns: [...costs(), ...folded([...pieces(), ...road(), ...leftovers(), ...strandings(), ...bars()])],
  };
}

function decisionCell(): CallsCell {
  return {
    id: 'decision',
    kind: 'calls',
    name: 'decision',
    title: 'Calls',
    gist: 'the calls of the plan, part by part',
    pairing: 'calls',
    part: 'part',
    call: 'call',
    cost: 'expected',
    allowed: 'allowed',
    reason: 'why_not',
    critical: 'critical',
    pins: {},
    plan: 'plan',
  };
}

/** The possible calls, what each costs for each part, and the calls themselves. */
export function callsCells(): (TableCell | PairingCell | CallsCell | PlanCell)[] {
  return [choicesTable(), reasonsTable(), callsPairing(), decisionCell(), planCell()];
}
