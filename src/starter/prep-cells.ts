import type { PairingCell, PictureCell, PrepCell, WorkedColumn } from '../notebook/document.ts';
import { worked } from './columns.ts';
import { readingPicture } from './picture-cells.ts';

const KM = { unit: 'km', decimals: 0 } as const;

/** A figure of the pairing of parts and legs for this part on this leg. */
const here = (column: string): string => `pick(ride.${column}, ride.part, part, ride.leg_number, leg_number)`;

/** 10% and 90% points of a lognormal rate, as in section 2. */
const TENTH = 1.2815515655446004;

function readingColumns(): WorkedColumn[] {
  return [
    worked('reach_here', here('reach'), { title: 'Reach', ...KM }),
    worked('middle', 'now + direction * rate * reach_here', { title: 'Likely reading', decimals: 2 }),
    worked('little_worn', `now + direction * rate * exp(-${TENTH} * spread) * reach_here`, {
      title: 'One in ten wears less',
      decimals: 2,
    }),
    worked('much_worn', `now + direction * rate * exp(${TENTH} * spread) * reach_here`, {
      title: 'One in ten wears more',
      decimals: 2,
    }),
    worked('worn_here', here('judged_worn'), { title: 'At its limit', decimals: 3 }),
    worked('worn_before', 'or_else(before(worn_here, part), 0)', {
      title: 'At its limit before',
      decimals: 3,
    }),
    worked(
      'look',
      'or_else(wear_shows and has_reading and not due, false) and or_else(worn_here > risk_limit and worn_before <= risk_limit, false)',
      { title: 'Look before this leg' },
    ),
    worked('look_km', 'km_done - distance', { title: 'At', ...KM }),
    worked('look_reading', 'or_else(before(middle, part), now)', { title: 'Likely then', decimals: 2 }),
  ];
}

function readingsPairing(): PairingCell {
  return {
    id: 'readings',
    kind: 'pairing',
    name: 'readings',
    title: 'Readings along the road',
    gist: 'what each gauge is likely to show at each leg’s end, and where to look',
    source:
      'Rates between their 10% and 90% points, as in Wear. A part is to be looked at before the leg on which its chance to be at the limit passes the risk limit.',
    left: 'wear',
    right: 'route',
    columns: readingColumns(),
  };
}

function prepCell(): PrepCell {
  return {
    id: 'prep',
    kind: 'prep',
    title: 'Prep sheet',
    gist: 'for the last night: order, fit, pack, look',
    calls: 'decision',
    reads: {
      pieces: 'calls.bought',
      cash: 'calls.cash',
      hours: 'calls.hours',
      packed: 'calls.packed',
      mass: 'calls.pack_kg',
      volume: 'calls.pack_L',
      critical: 'calls.critical',
      gauge: 'calls.measured_by',
      unit: 'calls.gauge_unit',
      now: 'calls.now',
      limit: 'calls.limit',
      bikes: 'calls.bikes',
      change_place: 'calls.change_at',
      offer_supplier: 'prices.supplier',
      offer_fits: 'prices.fits',
      offer_number: 'prices.offer',
      offer_pack: 'prices.pack',
      offer_days: 'prices.lead',
      offer_best: 'prices.best_here',
      offer_price: 'prices.pack_price',
      packs: 'plan.packs',
      freight: 'plan.freight',
      job_part: 'handling.part',
      job_opens: 'handling.opens',
      job_turn: 'handling.turn',
      job_hint: 'handling.hint',
      job_bag: 'handling.packed_in',
      job_carrier: 'handling.carrier',
      setup_job: 'jobs.job',
      setup_hours: 'jobs.setup',
      work: 'works.work',
      work_part: 'works.part',
      check_part: 'readings.part',
      check_here: 'readings.look',
      check_place: 'readings.start_place',
      check_km: 'readings.look_km',
      check_reading: 'readings.look_reading',
      stop_place: 'stops.start_place',
      stop_km: 'stops.start_km',
      stop_fuel: 'stops.fuel_leaving',
      stop_water: 'stops.water_leaving',
      stop_says: 'stops.says',
      oil: 'oil_to_carry',
      cut_off: 'cut_off',
      margin_days: 'arrival_margin',
    },
  };
}

/** Readings along the road, and the sheet for the last night. */
export function prepCells(): (PairingCell | PictureCell | PrepCell)[] {
  return [readingsPairing(), readingPicture(), prepCell()];
}
