import type {
  PlanCall,
  PlanInstance,
  PlanOffer,
  PlanPack,
  PlanPart,
  PlanSupplier,
} from '../../src/plan/plan-instance.ts';

/** Pieces of an instance with everything that a test does not care about left at nothing. */
export const part = (name: string, rest: Partial<PlanPart> = {}): PlanPart => ({
  name,
  on_hand: 0,
  stock: null,
  set: null,
  critical: false,
  rider: 'Ann',
  bag: null,
  rather_bag: null,
  stranding_cost: null,
  ...rest,
});

export const call = (
  of: string,
  name: string,
  cost_without_cash: number,
  rest: Partial<PlanCall> = {},
): PlanCall => ({
  part: of,
  name,
  kind: name.startsWith('replace') ? 'replace' : name.startsWith('carry') ? 'carry' : 'leave',
  cost_without_cash,
  per_price: 0,
  per_stranding: 0,
  need: 0,
  sent_out: 0,
  mass_kg: 0,
  volume_L: 0,
  carried_by: null,
  shed_hours: 0,
  jobs: [],
  strand_chance: 0,
  held_back: null,
  ...rest,
});

export const offer = (
  id: string,
  supplier: string,
  price: number,
  covers: PlanOffer['covers'],
  rest: Partial<PlanOffer> = {},
): PlanOffer => ({
  id,
  supplier,
  part_number: id,
  price,
  covers,
  kind: 'goods',
  arrives_in_days: null,
  ...rest,
});

export const supplier = (name: string, freight = 0, free_from: number | null = null): PlanSupplier => ({
  name,
  freight,
  free_from,
});

export const pack = (rest: Partial<PlanPack> = {}): PlanPack => ({
  rider: 'Ann',
  mass_kg: null,
  volume_L: null,
  packed_kg: 0,
  packed_L: 0,
  bags: [],
  ...rest,
});

export const instanceOf = (rest: Partial<PlanInstance>): PlanInstance => ({
  money: 'EUR',
  days_to_cut_off: null,
  margin_days: 0,
  parts: [],
  calls: [],
  offers: [],
  suppliers: [],
  jobs: [],
  pins: [],
  forbidden: [],
  ...rest,
  limits: { cash: null, shed_hours: null, trip_risk: null, packs: [pack()], ...rest.limits },
});
