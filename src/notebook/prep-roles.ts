/** What a prep sheet reads, each as `table.column` or the name of a single figure; a list without its roles is left out. */
export const PREP_ROLES = [
  // Columns of the pairing of parts and calls, its parents' included.
  'pieces',
  'cash',
  'hours',
  'packed',
  'mass',
  'volume',
  'critical',
  'gauge',
  'unit',
  'now',
  'limit',
  'bikes',
  'change_place',
  // Offers.
  'offer_supplier',
  'offer_fits',
  'offer_number',
  'offer_pack',
  'offer_days',
  'offer_best',
  'offer_price',
  // Packs to buy of each offer, where a plan says so, and the freight of it all.
  'packs',
  'freight',
  // How a part is fitted and stowed.
  'job_part',
  'job_opens',
  'job_turn',
  'job_hint',
  'job_bag',
  'job_carrier',
  // What is set up once for all parts behind it, and the work that a workshop does.
  'setup_job',
  'setup_hours',
  'work',
  'work_part',
  // Checks on the road: a pairing of parts and legs.
  'check_part',
  'check_here',
  'check_place',
  'check_km',
  'check_reading',
  // Fuel and water by stop.
  'stop_place',
  'stop_km',
  'stop_fuel',
  'stop_water',
  'stop_says',
  // Single figures.
  'oil',
  'cut_off',
  'margin_days',
] as const;
export type PrepRole = (typeof PREP_ROLES)[number];
