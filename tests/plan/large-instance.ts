import type { PlanCall, PlanInstance, PlanOffer, PlanPart } from '../../src/plan/plan-instance.ts';
import { seeded } from '../trade/seeded.ts';

export interface Size {
  readonly parts: number;
  readonly offers: number;
  readonly seed: number;
}

const SUPPLIERS = [
  { name: 'Northgate', freight: 9.5, free_from: 150 },
  { name: 'Quayside', freight: 6.8, free_from: null },
  { name: 'Dray', freight: 24, free_from: 400 },
  { name: 'Alderbrook', freight: 12, free_from: 250 },
  { name: 'Millrace', freight: 4.9, free_from: 80 },
] as const;

/**
 * An invented plan of any size, all six calls open to each part: prices over three orders of magnitude, one
 * offer in eight a kit, one in ten too late, and limits that bind (about a third of what all would take).
 */
export function largeInstance({ parts: partCount, offers: offerCount, seed }: Size): PlanInstance {
  const random = seeded(seed);
  const cents = (low: number, high: number): number =>
    Math.round((low + (high - low) * random()) * 100) / 100;
  const chance = (share: number): boolean => random() < share;
  const pickOne = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!;
  const parts: PlanPart[] = [];
  const calls: PlanCall[] = [];
  const prices = new Map<string, number>();
  for (let index = 0; index < partCount; index += 1) {
    const name = `Part ${index + 1}`;
    const price = Math.round(500 * 1.6 ** (4 * random())) / 100;
    prices.set(name, price);
    parts.push({
      name,
      on_hand: chance(0.1) ? 1 : 0,
      set: index % 12 < 3 ? `set ${Math.floor(index / 12)}` : null,
      critical: chance(0.4),
      rider: 'Ann',
      stock: null,
      bag: null,
      rather_bag: null,
      stranding_cost: null,
    });
    const leave = cents(2, 160);
    const mass_kg = cents(0.05, 2.5);
    const volume_L = cents(0.05, 3);
    const shed_hours = cents(0.2, 2);
    const jobs = chance(0.4) ? [`job ${1 + Math.floor(random() * 8)}`] : [];
    const call = (
      kind: PlanCall['kind'],
      call_name: string,
      cost: number,
      rest: Partial<PlanCall>,
    ): PlanCall => ({
      part: name,
      name: call_name,
      kind,
      cost_without_cash: cost,
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
    const risk = random() * 0.08;
    const replaced = cents(0.05, 0.4) * leave - 0.2 * price;
    const carried = cents(0.2, 0.6) * leave - 0.6 * price;
    calls.push(
      call('leave', 'leave', leave, { strand_chance: risk }),
      call('replace', 'replace', replaced, { need: 1, shed_hours, jobs, strand_chance: risk / 10 }),
      call('carry', 'carry 1', carried, { need: 1, mass_kg, volume_L, strand_chance: risk / 20 }),
      call('carry', 'carry 2', carried - 0.7 * price, {
        need: 2,
        mass_kg: 2 * mass_kg,
        volume_L: 2 * volume_L,
      }),
      call('keep', 'replace and keep old', replaced * 0.8, { need: 1, mass_kg, volume_L, shed_hours, jobs }),
      call('way', 'change on the way', cents(0.5, 1.2) * leave, { strand_chance: risk / 2 }),
    );
  }
  const offers: PlanOffer[] = [];
  for (let index = 0; index < offerCount; index += 1) {
    // Each part is on offer at least once; what is left goes to any.
    const first = index < partCount ? parts[index]! : pickOne(parts);
    const covers: [string, number][] = [[first.name, chance(0.1) ? 2 : 1]];
    if (index >= partCount && chance(0.125)) {
      for (const other of [pickOne(parts), pickOne(parts)])
        if (covers.every(([name]) => name !== other.name)) covers.push([other.name, 1]);
    }
    const list = covers.reduce((total, [name, pieces]) => total + pieces * (prices.get(name) ?? 0), 0);
    offers.push({
      id: `O-${index + 1}`,
      supplier: pickOne(SUPPLIERS).name,
      part_number: `N${index + 1}`,
      price: Math.round(100 * list * (covers.length > 1 ? 0.85 : 1) * (0.85 + 0.3 * random())) / 100,
      covers,
      kind: 'goods',
      arrives_in_days: index >= partCount && chance(0.1) ? 30 : 5,
    });
  }
  return {
    money: 'EUR',
    days_to_cut_off: 21,
    margin_days: 3,
    parts,
    calls,
    offers,
    suppliers: SUPPLIERS,
    jobs: Array.from({ length: 8 }, (_, index) => ({
      name: `job ${index + 1}`,
      setup_hours: 0.5,
      setup_cost: 0,
    })),
    limits: {
      cash: 6 * partCount,
      shed_hours: 0.25 * partCount,
      trip_risk: 1 - 0.99 ** partCount,
      packs: [
        {
          rider: 'Ann',
          mass_kg: 0.25 * partCount + 18,
          volume_L: 0.3 * partCount + 60,
          packed_kg: 18,
          packed_L: 60,
          bags: [],
        },
      ],
    },
    pins: [],
    forbidden: [],
  };
}
