import { type PlanBag, type PlanCall, type PlanInstance, type PlanPack, packerOf } from './plan-instance.ts';
import type { Plan } from './plan-result.ts';
import { plannedCalls } from './plan-totals.ts';

/** Room is measured with this much to spare for rounding, kg and L. */
const ROUNDING = 1e-9;

/** Ways to fill the bags that are looked at before the search gives up. */
const MOST_TRIES = 50_000;

interface Spare {
  readonly part: string;
  readonly call: PlanCall;
  /** Bags that it may go into, the one where it rather goes first. */
  readonly into: readonly Room[];
  /** Its larger share of all the room there is: large ones are placed first. */
  readonly size: number;
}

/** What a bag still takes, while it is filled. */
interface Room {
  readonly name: string;
  kg: number;
  L: number;
}

/**
 * The same plan with its spares put into the bags: each where it rather goes, as far as that leaves a place for
 * all. The largest are placed first, and moved again when a later one finds no room.
 *
 * Example: a tube of 1.6 kg goes into the left pannier, which is asked for, when 1.6 kg are left there.
 *
 * @returns null where no way was found in 50,000 tries: nothing is then said of whether there is one
 */
export function packBags(instance: PlanInstance, plan: Plan): Plan | null {
  const bagOf = new Map<string, string>();
  for (const pack of instance.limits.packs) {
    if (pack.bags.length === 0) continue;
    const placed = fill(sparesOf(instance, plan, pack));
    if (placed === null) return null;
    for (const [part, bag] of placed) bagOf.set(part, bag);
  }
  return { ...plan, chosen: plan.chosen.map((one) => ({ ...one, bag: bagOf.get(one.part) ?? null })) };
}

function sparesOf(instance: PlanInstance, plan: Plan, pack: PlanPack): Spare[] {
  const rooms = pack.bags.map(roomOf);
  const [kg, L] = [sum(rooms.map((room) => room.kg)), sum(rooms.map((room) => room.L))];
  const parts = new Map(instance.parts.map((part) => [part.name, part]));
  return plannedCalls(instance, plan)
    .filter(({ call, packer }) => packer === pack.rider && (call.mass_kg > 0 || call.volume_L > 0))
    .map(({ call }): Spare => {
      const part = parts.get(call.part);
      const own = part !== undefined && packerOf(part, call) === part.rider ? part.bag : null;
      const may = own === null ? rooms : rooms.filter(({ name }) => name === own);
      const rather = may.filter(({ name }) => name === part?.rather_bag);
      const into = [...rather, ...may.filter((room) => !rather.includes(room))];
      return { part: call.part, call, into, size: Math.max(call.mass_kg / kg, call.volume_L / L) };
    })
    .sort((a, b) => b.size - a.size);
}

const roomOf = (bag: PlanBag): Room => ({
  name: bag.name,
  kg: bag.mass_kg === null ? Number.POSITIVE_INFINITY : bag.mass_kg - bag.packed_kg,
  L: bag.volume_L === null ? Number.POSITIVE_INFINITY : bag.volume_L - bag.packed_L,
});

/** Places all spares, or none; the rooms are as before where there is no way. */
function fill(spares: readonly Spare[]): ReadonlyMap<string, string> | null {
  const placed = new Map<string, string>();
  let tries = 0;
  const place = (at: number): boolean => {
    const spare = spares[at];
    if (spare === undefined) return true;
    for (const room of spare.into) {
      tries += 1;
      if (tries > MOST_TRIES) return false;
      const { mass_kg, volume_L } = spare.call;
      if (mass_kg > room.kg + ROUNDING || volume_L > room.L + ROUNDING) continue;
      room.kg -= mass_kg;
      room.L -= volume_L;
      placed.set(spare.part, room.name);
      if (place(at + 1)) return true;
      room.kg += mass_kg;
      room.L += volume_L;
    }
    return false;
  };
  return place(0) ? placed : null;
}

/**
 * The instance with each pack's bags taken as one: whatever fits the bags fits this. A plan for it whose spares
 * then find places in the bags is the best with the bags as well, and much sooner found.
 */
export function bagsAsOne(instance: PlanInstance): PlanInstance {
  const packs = instance.limits.packs.map((pack): PlanPack => {
    if (pack.bags.length === 0) return pack;
    const rooms = pack.bags.map(roomOf);
    const within = (limit: number | null, packed: number, room: number): number | null =>
      Number.isFinite(room) ? Math.min(limit ?? Number.POSITIVE_INFINITY, packed + room) : limit;
    return {
      ...pack,
      mass_kg: within(pack.mass_kg, pack.packed_kg, sum(rooms.map((room) => room.kg))),
      volume_L: within(pack.volume_L, pack.packed_L, sum(rooms.map((room) => room.L))),
      bags: [],
    };
  });
  return { ...instance, limits: { ...instance.limits, packs } };
}

const sum = (figures: readonly number[]): number => figures.reduce((total, figure) => total + figure, 0);
