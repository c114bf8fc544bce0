import type { PlanCall, PlanInstance, PlanOffer, PlanPart } from '../../src/plan/plan-instance.ts';
import { seeded } from '../trade/seeded.ts';
import { call, instanceOf, offer, pack, part, supplier } from './small-instance.ts';

const KINDS = ['leave', 'replace', 'carry', 'keep', 'way'] as const;

/**
 * A small plan of anything that plans may have: 2 to 8 parts, critical ones among them; kits, packs of two, work
 * sent out, late offers; freight with and without a free sum; every limit, tight or loose; spares one to three
 * deep; bags, two riders whose like parts take the same pieces; sets, jobs, pins, forbidden and held back calls;
 * whole figures often, so that equal plans happen.
 */
export function randomInstance(seed: number): PlanInstance {
  const random = seeded(seed);
  const upTo = (most: number): number => Math.floor(random() * (most + 1));
  const chance = (share: number): boolean => random() < share;
  const figure = chance(0.5)
    ? (most: number) => upTo(most)
    : (most: number) => Math.round(random() * most * 100) / 100;
  const bagged = chance(0.25);
  const twoBikes = chance(0.3);
  const parts: PlanPart[] = Array.from({ length: 2 + upTo(6) }, (_, index) =>
    part(`P${index}`, {
      on_hand: chance(0.2) ? 1 : 0,
      set: chance(0.2) ? 'S' : null,
      rider: chance(0.2) ? 'Bo' : 'Ann',
      stock: twoBikes && index < 3 ? 'P0' : null,
      critical: chance(0.25),
    }),
  );
  const perPart = parts.length >= 7 ? 2 : parts.length >= 5 ? 3 : 4;
  const calls = parts.flatMap((one) => callsOf(one, perPart));
  const offers = Array.from({ length: 3 + upTo(3) }, (_, index) => anyOffer(index));
  return instanceOf({
    days_to_cut_off: 10,
    margin_days: 2,
    parts,
    calls,
    offers,
    suppliers: [
      supplier('s0', figure(12), 20 + upTo(60)),
      supplier('s1', figure(9)),
      supplier('s2', 5, chance(0.5) ? 0 : 40),
    ],
    jobs: [
      { name: 'g0', setup_hours: figure(2), setup_cost: chance(0.5) ? figure(20) : 0 },
      { name: 'g1', setup_hours: 0.5, setup_cost: 0 },
    ],
    pins: parts.slice(0, 2).flatMap(({ name }) => (chance(0.2) ? [anyCallOf(name)] : [])),
    forbidden: parts.slice(1, 3).flatMap(({ name }) => (chance(0.2) ? [anyCallOf(name)] : [])),
    limits: {
      cash: chance(0.7) ? 10 + upTo(120) : null,
      shed_hours: chance(0.6) ? upTo(6) : null,
      trip_risk: chance(0.5) ? random() * 0.3 : null,
      packs: [packOf('Ann', bagged), packOf('Bo', false)],
    },
  });

  function anyCallOf(name: string): { part: string; call: string } {
    const own = calls.filter((one) => one.part === name);
    return { part: name, call: own[upTo(own.length - 1)]!.name };
  }

  function callsOf(one: PlanPart, count: number): PlanCall[] {
    return Array.from({ length: 1 + upTo(count - 1) }, (_, index) => {
      const kind = KINDS[upTo(4)]!;
      const buys = kind === 'leave' || kind === 'way' ? 0 : kind === 'carry' ? depth() : 1;
      const sent = buys === 1 && chance(0.2);
      const packs = kind === 'carry' || kind === 'keep';
      return call(one.name, `c${index}`, figure(90) - (chance(0.1) ? 40 : 0), {
        kind,
        need: sent ? 0 : buys,
        sent_out: sent ? 1 : 0,
        mass_kg: packs ? buys * figure(2) : 0,
        volume_L: packs ? buys * figure(3) : 0,
        carried_by: packs && chance(0.1) ? 'Bo' : null,
        shed_hours: kind === 'replace' || kind === 'keep' ? figure(2) : 0,
        jobs: chance(0.3) ? ['g0'] : chance(0.2) ? ['g0', 'g1'] : [],
        strand_chance: chance(0.6) ? random() * 0.2 : 0,
        held_back: barred(one, kind) ? 'Safety before cost.' : null,
      });
    });
  }

  function depth(): number {
    return chance(0.6) ? 1 : 2 + upTo(1);
  }

  /** Section 8: a critical part is often not to be left or carried for, any other seldom. */
  function barred({ critical }: PlanPart, kind: PlanCall['kind']): boolean {
    return chance(critical && (kind === 'leave' || kind === 'carry') ? 0.4 : 0.04);
  }

  function anyOffer(index: number): PlanOffer {
    const anyPart = (): string => {
      const one = parts[upTo(parts.length - 1)]!;
      return one.stock ?? one.name;
    };
    const covers = new Map([[anyPart(), chance(0.2) ? 2 : 1]]);
    if (chance(0.4)) covers.set(anyPart(), 1);
    return offer(`o${index}`, `s${upTo(2)}`, 1 + figure(50), [...covers], {
      kind: chance(0.15) ? 'workshop' : 'goods',
      arrives_in_days: chance(0.1) ? 9 : chance(0.5) ? 8 : null,
    });
  }

  function packOf(rider: string, withBags: boolean) {
    return pack({
      rider,
      mass_kg: chance(0.5) ? 1 + upTo(6) : null,
      volume_L: chance(0.5) ? 2 + upTo(6) : null,
      packed_kg: chance(0.3) ? 1 : 0,
      packed_L: chance(0.2) ? 2 : 0,
      bags: withBags
        ? [
            { name: 'left', mass_kg: 1 + upTo(3), volume_L: null, packed_kg: 0, packed_L: 1 },
            { name: 'right', mass_kg: null, volume_L: 2 + upTo(3), packed_kg: 0.5, packed_L: 0 },
          ]
        : [],
    });
  }
}
