import type { FormulaCell, PictureCell } from '../notebook/document.ts';

/** Where on the road the parts give up, if all are left on. */
export function riskPicture(): PictureCell {
  return {
    id: 'risk_map',
    kind: 'picture',
    title: 'Where it would hurt',
    gist: 'parts by legs, shaded by what is at stake there',
    source:
      'From Where parts give up: chance times cost there, with what follows, as if every part were left, or with the calls as they stand.',
    shape: 'map',
    reads: {
      of: 'ride.part',
      along: 'ride.leg',
      chance: 'ride.p',
      cost: 'ride.leave_cost',
      chance_called: 'ride.called_p',
      cost_called: 'ride.called_cost',
      place: 'ride.end_place',
      length: 'ride.distance',
      far: 'ride.help_distance',
    },
    figures: [],
  };
}

/** What a gauge is likely to show along the road. */
export function readingPicture(): PictureCell {
  return {
    id: 'reading_picture',
    kind: 'picture',
    title: 'A reading along the road',
    gist: 'what the gauge is likely to show',
    source:
      'From Readings along the road: the middle, and the points that one trip in ten lies below and above.',
    shape: 'reading',
    reads: {
      of: 'readings.part',
      along: 'readings.km_done',
      middle: 'readings.middle',
      low: 'readings.much_worn',
      high: 'readings.little_worn',
      limit: 'readings.limit',
      unit: 'readings.gauge_unit',
      place: 'readings.end_place',
    },
    figures: [],
    one: 'Drive chain',
  };
}

/** What more or less money would do, with today's plan on it. */
export function spendingPicture(): PictureCell {
  return {
    id: 'spending_picture',
    kind: 'picture',
    title: 'What more money buys',
    gist: 'spending against the chance of a recovery; a point sets the budget',
    source: 'The best plan for each sum, found as the plan itself is, under the same limits.',
    shape: 'spending',
    reads: { plan: 'plan' },
    figures: [],
  };
}

const COSTS: readonly (readonly [string, string, string])[] = [
  ['stays_total', 'Stays', 'sum(route.stay_cost)'],
  ['other_total', 'Ferry, permits, other', 'sum(route.other_cost)'],
  ['left_over_credit', 'Less what is left over', '-left_over_worth'],
];

/** What the trip costs, by kind, and what each part takes. */
export function costPictures(): (FormulaCell | PictureCell)[] {
  const formulas = COSTS.map(
    ([name, title, formula]): FormulaCell => ({
      id: name,
      kind: 'formula',
      name,
      title,
      formula,
      unit: 'EUR',
      decimals: 0,
    }),
  );
  return [
    ...formulas,
    {
      id: 'cost_picture',
      kind: 'picture',
      title: 'What the trip costs',
      gist: 'by kind; together they are the expected total',
      shape: 'bars',
      reads: {},
      figures: [
        'fuel_total',
        'stays_total',
        'other_total',
        'parts_spending',
        'shelf_cost',
        'work_cost',
        'road_cost',
        'left_over_credit',
      ],
    },
    {
      id: 'share_picture',
      kind: 'picture',
      title: 'What each part takes',
      gist: 'cash, pack and hours of the calls as they stand',
      shape: 'bars',
      reads: { of: 'calls.part', where: 'calls.chosen' },
      figures: ['calls.cash', 'calls.pack_kg', 'calls.pack_L', 'calls.hours', 'calls.on_road'],
    },
  ];
}
