import type { PairingCell, WorkedColumn } from '../notebook/document.ts';
import { folded, worked } from './columns.ts';
import { hitColumns } from './ride-hits.ts';
import { sharedColumns } from './ride-shared.ts';

const MONEY = { unit: 'EUR', decimals: 2 } as const;
const CHANCE = { decimals: 4 } as const;
const KM = { unit: 'km', decimals: 0 } as const;

/** Figures of the old part and of a new one, as the functions of later legs take them. */
const OLD = 'allowance, rate, middle_life, spread, gauge_error, age, life, shape';
const NEW = 'full_allowance, rate, middle_life, spread, 0, 0 km, life, shape';

/** Columns in sight: how far the part has come, and where it gives up. */
function shown(): WorkedColumn[] {
  return [
    worked('step', 'distance * severity_here * load', { title: 'Wear of this leg', ...KM }),
    worked('reach', 'running(step, part)', { title: 'Reach', ...KM }),
    worked('p', 'p_worn + p_sudden', { title: 'Gives up here', ...CHANCE }),
    worked('p_worn', '(worn - worn_before) * (whole + whole_before) / 2 + due_here', {
      title: 'Worn out',
      ...CHANCE,
    }),
    worked('p_sudden', '(whole_before - whole) * ((1 - worn) + (1 - worn_before)) / 2', {
      title: 'Sudden',
      ...CHANCE,
    }),
    worked('still_fit', '(1 - worn) * whole', { title: 'Still fit at its end', ...CHANCE }),
    worked('worn_cost', 'wait_cost + road_fitted + worn_needs * recovery', {
      title: 'Cost if worn',
      ...MONEY,
    }),
    worked('sudden_cost', 'wait_cost + road_fitted + recovery', { title: 'Cost if sudden', ...MONEY }),
    worked('fixed_cost', 'road_hours * hour_value + spare_needs * recovery', {
      title: 'Cost with a spare',
      ...MONEY,
    }),
  ];
}

/** Severity of the leg for the part's wear class; section 1. */
function severities(): WorkedColumn[] {
  return [
    worked(
      'main_severity',
      'pick(severity.factor, severity.wear_class, wear_class, severity.surface, surface)',
      { title: 'Severity', decimals: 2 },
    ),
    worked(
      'second_severity',
      'or_else(pick(severity.factor, severity.wear_class, wear_class, severity.surface, second_surface), main_severity)',
      { title: 'Of the second surface', decimals: 2 },
    ),
    worked('severity_here', '(1 - second_part) * main_severity + second_part * second_severity', {
      title: 'Severity, mixed',
      decimals: 2,
    }),
    worked('leg_told', 'not (is_missing(p + q) or is_missing(wait_cost + recovery + fixed_cost))', {
      title: 'All known here',
    }),
    worked('wait_cost', 'max(wait_days, road_lead) * day_value * riders_who_wait', {
      title: 'Waiting for one',
      ...MONEY,
    }),
  ];
}

/** Chances of the old part, and of a new one fitted before the start; sections 2 to 4. */
function chances(): WorkedColumn[] {
  return [
    worked('never', 'some_known and not is_missing(reach) ? 0 : missing', {
      title: 'Never, if so known',
      decimals: 0,
    }),
    worked('worn', 'has_reading ? limit_chance(allowance, rate, spread, reach, gauge_error) : worn_by_age', {
      title: 'Worn out by here',
      ...CHANCE,
    }),
    worked('worn_by_age', 'has_life ? life_chance(age, reach, middle_life, spread) : never', {
      title: 'By age',
      ...CHANCE,
    }),
    worked('whole', 'has_sudden ? survival(age, reach, life, shape) : 1 - never', {
      title: 'No sudden failure',
      ...CHANCE,
    }),
    worked('worn_before', 'or_else(before(worn, part), due_now)', { title: 'Worn out before', ...CHANCE }),
    worked('whole_before', 'or_else(before(whole, part), 1)', { title: 'None before', ...CHANCE }),
    worked('due_here', 'is_missing(before(worn, part)) ? due_now : 0', {
      title: 'Due at the start',
      ...CHANCE,
    }),
    worked('limit_leg_here', 'worn >= 0.5 ? leg_number : missing', { title: 'Limit reached', decimals: 0 }),
    worked('new_worn', 'has_reading ? limit_chance(full_allowance, rate, spread, reach) : new_worn_by_age', {
      title: 'New: worn out',
      ...CHANCE,
    }),
    worked('new_worn_by_age', 'has_life ? life_chance(0 km, reach, middle_life, spread) : never', {
      title: 'New: by age',
      ...CHANCE,
    }),
    worked('new_whole', 'has_sudden ? survival(0 km, reach, life, shape) : 1 - never', {
      title: 'New: none sudden',
      ...CHANCE,
    }),
    worked('new_worn_before', 'or_else(before(new_worn, part), 0)', { title: 'New: worn before', ...CHANCE }),
    worked('new_whole_before', 'or_else(before(new_whole, part), 1)', {
      title: 'New: none before',
      ...CHANCE,
    }),
    worked('q_worn', '(new_worn - new_worn_before) * (new_whole + new_whole_before) / 2', {
      title: 'New: worn here',
      ...CHANCE,
    }),
    worked('q_sudden', '(new_whole_before - new_whole) * ((1 - new_worn) + (1 - new_worn_before)) / 2', {
      title: 'New: sudden here',
      ...CHANCE,
    }),
    worked('q', 'q_worn + q_sudden', { title: 'New: gives up here', ...CHANCE }),
  ];
}

/** What follows once a part is fitted at the end of this leg: U, U1, U2, O and K, J of section 6. */
function laterOn(): WorkedColumn[] {
  const later = 'later_cost(reach, part, worn_cost, sudden_cost';
  const spare = 'later_cost(reach, part, fixed_cost, fixed_cost';
  return [
    worked('later_none', `${later}, ${NEW})`, { title: 'Later, no spare', ...MONEY }),
    worked('later_one', `${spare}, ${NEW}, later_none)`, { title: 'Later, one spare', ...MONEY }),
    worked('later_two', `${spare}, ${NEW}, later_one)`, { title: 'Later, two spares', ...MONEY }),
    worked('later_old', `${later}, ${OLD}, later_none)`, { title: 'Later, old one back on', ...MONEY }),
    worked('later_share', `later_left(reach, part, full_allowance, ${NEW})`, {
      title: 'Life left, new',
      ...CHANCE,
    }),
    worked(
      'later_old_share',
      `later_left(reach, part, ${OLD.replace('allowance,', 'allowance, full_allowance,')}, later_share)`,
      {
        title: 'Life left, old back on',
        ...CHANCE,
      },
    ),
    worked('later_use_one', `later_cost(reach, part, 1, 1, ${NEW}, 0)`, {
      title: 'Used later, of one',
      ...CHANCE,
    }),
    worked('later_use_two', `later_cost(reach, part, 1, 1, ${NEW}, later_use_one)`, {
      title: 'Used later, of two',
      ...CHANCE,
    }),
    worked('needs_none', `later_strand(reach, part, worn_needs, 1, ${NEW})`, {
      title: 'Recovery later, no spare',
      ...CHANCE,
    }),
    worked('needs_one', `later_strand(reach, part, spare_needs, spare_needs, ${NEW}, needs_none)`, {
      title: 'Recovery, one spare',
      ...CHANCE,
    }),
    worked('needs_two', `later_strand(reach, part, spare_needs, spare_needs, ${NEW}, needs_one)`, {
      title: 'Recovery, two spares',
      ...CHANCE,
    }),
    worked('needs_old', `later_strand(reach, part, worn_needs, 1, ${OLD}, needs_none)`, {
      title: 'Recovery, old back on',
      ...CHANCE,
    }),
  ];
}

/** This leg’s part of what each call costs on the road, of the life left and of the chance of a recovery. */
function byCall(): WorkedColumn[] {
  const carried = (spares: number, next: string, used: string): WorkedColumn[] => [
    worked(
      `carry_${spares}_cost`,
      `by_chance ? hit_cost_${spares} : shares ? shared_cost_${spares} : p * (fixed_cost + later_${next})`,
      { title: `Carry ${spares}`, ...MONEY },
    ),
    worked(
      `carry_${spares}_needs`,
      `shares ? shared_needs_${spares} : p * (spare_needs + (1 - spare_needs) * needs_${next})`,
      { title: `Recovery, carry ${spares}`, ...CHANCE },
    ),
    worked(`used_of_${spares}`, `shares ? shared_used_${spares} : ${used}`, {
      title: `Used of ${spares}`,
      ...CHANCE,
    }),
  ];
  return [
    worked(
      'leave_cost',
      'by_chance ? hit_cost_0 : p_worn * (worn_cost + later_none) + p_sudden * (sudden_cost + later_none)',
      { title: 'Leave', ...MONEY },
    ),
    worked(
      'replace_cost',
      'by_chance ? hit_cost_0 : q_worn * (worn_cost + later_none) + q_sudden * (sudden_cost + later_none)',
      { title: 'Replace', ...MONEY },
    ),
    worked('keep_cost', 'by_chance ? hit_cost_1 : q * (fixed_cost + later_old)', {
      title: 'Replace, keep old',
      ...MONEY,
    }),
    ...carried(1, 'none', 'p'),
    ...carried(2, 'one', 'p * (1 + later_use_one)'),
    ...carried(3, 'two', 'p * (1 + later_use_two)'),
    worked('leave_share', 'p * later_share', { title: 'Life left, leave', ...CHANCE }),
    worked('replace_share', 'q * later_share', { title: 'Life left, replace', ...CHANCE }),
    worked('keep_share', 'q * later_old_share', { title: 'Life left, keep old', ...CHANCE }),
    worked('leave_needs', 'p_worn * (worn_needs + (1 - worn_needs) * needs_none) + p_sudden', {
      title: 'Recovery, leave',
      ...CHANCE,
    }),
    worked('replace_needs', 'q_worn * (worn_needs + (1 - worn_needs) * needs_none) + q_sudden', {
      title: 'Recovery, replace',
      ...CHANCE,
    }),
    worked('keep_needs', 'q * (spare_needs + (1 - spare_needs) * needs_old)', {
      title: 'Recovery, keep old',
      ...CHANCE,
    }),
  ];
}

/** How a critical part is judged at the end of each leg, and a new one over the rest: section 8. */
function judged(): WorkedColumn[] {
  return [
    worked(
      'judged_worn',
      'has_reading ? limit_chance(allowance, rate, judged_spread, reach, gauge_error) : judged_by_age',
      {
        title: 'Worn out, judged',
        ...CHANCE,
      },
    ),
    worked('judged_by_age', 'has_life ? life_chance(age, reach, middle_life, judged_spread) : never', {
      title: 'By age, judged',
      ...CHANCE,
    }),
    worked('judged_gone', '1 - (1 - judged_worn) * whole', { title: 'Given up, judged', ...CHANCE }),
    worked('over_leg', 'judged_gone > risk_limit ? leg_number : missing', {
      title: 'Over the risk limit',
      decimals: 0,
    }),
    worked('to_come', 'reach_end - reach', { title: 'Reach to come', ...KM }),
    worked(
      'rest_worn',
      'has_reading ? limit_chance(full_allowance, rate, judged_spread, to_come) : rest_by_age',
      {
        title: 'New: worn by the end',
        ...CHANCE,
      },
    ),
    worked('rest_by_age', 'has_life ? life_chance(0 km, to_come, middle_life, judged_spread) : never', {
      title: 'New: by age',
      ...CHANCE,
    }),
    worked('rest_whole', 'has_sudden ? survival(0 km, to_come, life, shape) : 1 - never', {
      title: 'New: none sudden after',
      ...CHANCE,
    }),
    worked('judged_rest', '1 - (1 - rest_worn) * rest_whole', { title: 'New: gives up after', ...CHANCE }),
  ];
}

/** A change on the way, planned for the end of this leg; the best place is the cheapest that the rules allow. */
function onTheWay(): WorkedColumn[] {
  return [
    worked('stretch_risk', 'max(judged_gone, judged_rest)', { title: 'Risk between changes', ...CHANCE }),
    worked('a_stop', 'shop and to_come > 0 km', { title: 'A place to change it' }),
    worked('stop_risk', 'a_stop ? stretch_risk : missing', { title: 'Risk, changed here', ...CHANCE }),
    worked('change_fits', 'a_stop and not due and (not counts_critical or stretch_risk <= risk_limit)', {
      title: 'May be changed here',
    }),
    worked('change_cost', 'running(leave_cost, part) + still_fit * (road_fitted + later_none)', {
      title: 'Changed here',
      ...MONEY,
    }),
    worked('change_share', 'running(leave_share, part) + still_fit * later_share', {
      title: 'Life left',
      ...CHANCE,
    }),
    worked('change_needs', 'running(leave_needs, part) + still_fit * needs_none', {
      title: 'Recovery',
      ...CHANCE,
    }),
    worked('change_judged', '1 - (1 - judged_gone) * (1 - judged_rest)', {
      title: 'Gives up, judged',
      ...CHANCE,
    }),
    worked('change_rank', 'change_fits ? change_cost - change_share * life_worth : missing', {
      title: 'Cost to compare',
      ...MONEY,
    }),
    worked('change_best', 'or_else(change_rank == least_of(change_rank, part, part), false)', {
      title: 'Cheapest place',
    }),
    worked('change_count', 'running(change_best ? 1 : 0, part)', { title: 'Cheapest so far', decimals: 0 }),
    worked('change_here', 'change_best and change_count == 1', { title: 'Best place' }),
  ];
}

/**
 * The same with the calls as they stand. What follows once a part has given up, or has been changed as planned,
 * stands on the leg where that happens, so that a part's sum is the cost on the road of its call.
 */
function asCalled(): WorkedColumn[] {
  const choice = (column: string): string => `pick(choices.${column}, choices.call, call_here)`;
  return [
    worked('call_here', 'pick(decision.call, decision.part, part)', { title: 'Its call' }),
    worked('called_new', choice('fits_new'), { title: 'Called: new one fitted' }),
    worked('called_keeps', choice('keeps_old'), { title: 'Called: old one kept' }),
    worked('called_spares', choice('spares'), { title: 'Called: spares', decimals: 0 }),
    worked('called_way', choice('on_the_way'), { title: 'Called: on the way' }),
    worked('before_change', 'change_count == 0 or change_here', { title: 'Up to the change' }),
    worked('called_p', 'called_new ? q : called_way and not before_change ? 0 : p', {
      title: 'Gives up, as called',
      ...CHANCE,
    }),
    worked('called_fitted', 'called_keeps ? keep_cost : replace_cost', {
      title: 'Cost, new one fitted',
      ...MONEY,
    }),
    worked('called_change', 'change_here ? still_fit * (road_fitted + later_none) : 0 EUR', {
      title: 'Planned change',
      ...MONEY,
    }),
    worked('called_old', 'called_way ? (before_change ? leave_cost + called_change : 0 EUR) : leave_cost', {
      title: 'Cost, old one on',
      ...MONEY,
    }),
    worked('called_more', 'called_spares == 2 ? carry_2_cost : carry_3_cost', {
      title: 'Cost, two or three',
      ...MONEY,
    }),
    worked('called_packed', 'called_spares == 1 ? carry_1_cost : called_more', {
      title: 'Cost, spares packed',
      ...MONEY,
    }),
    worked('called_cost', 'called_new ? called_fitted : called_spares > 0 ? called_packed : called_old', {
      title: 'Cost, as called',
      ...MONEY,
    }),
  ];
}

/** Every fitted part met with every leg: where it gives up, what that costs, and what follows. */
export function rideCells(): PairingCell[] {
  return [
    {
      id: 'ride',
      kind: 'pairing',
      name: 'ride',
      title: 'Where parts give up',
      gist: 'every part on every leg: chance, cost, and what follows',
      source:
        'Lognormal wear to a limit and Weibull sudden failure (Weibull 1951; MIL-HDBK-338B 5.3.6), then a renewal recursion leg by leg; random hits by Poisson.',
      left: 'wear',
      right: 'route',
      columns: [
        ...shown(),
        ...folded([
          ...severities(),
          ...chances(),
          ...laterOn(),
          ...hitColumns(),
          ...sharedColumns(),
          ...byCall(),
          ...judged(),
          ...onTheWay(),
          ...asCalled(),
        ]),
      ],
    },
  ];
}
