import type { PlanBag, PlanPack, PlanPart } from '../../plan/plan-instance.ts';
import { orNone, orNought, type RoleReader } from './role-reader.ts';

/**
 * The packs, one for each rider that a part, a bag or the table of riders names; who rides alone needs no name.
 * Limits of a pack: the rider's own, or those of the whole trip where the riders have none.
 *
 * What is in a bag already counts against that bag. The limits of the whole pack are on spares alone.
 */
export function packsOf(read: RoleReader, parts: readonly PlanPart[]): PlanPack[] {
  const bags = bagsOf(read);
  const own = new Map<string, { readonly mass: number; readonly volume: number }>();
  for (let row = 0; row < read.rows('pack_rider'); row++) {
    const rider = read.text('pack_rider', row);
    if (rider !== null)
      own.set(rider, { mass: read.figure('pack_mass', row), volume: read.figure('pack_volume', row) });
  }
  const riders = new Set([...parts.map(({ rider }) => rider), ...bags.keys(), ...own.keys()]);
  if (riders.size === 0) riders.add('');
  return [...riders].map((rider) => ({
    rider,
    mass_kg: own.has(rider) ? orNone(own.get(rider)!.mass) : read.single('mass_limit'),
    volume_L: own.has(rider) ? orNone(own.get(rider)!.volume) : read.single('volume_limit'),
    packed_kg: 0,
    packed_L: 0,
    bags: bags.get(rider) ?? [],
  }));
}

/** The bags by rider, in the order of their table. */
function bagsOf(read: RoleReader): ReadonlyMap<string, PlanBag[]> {
  const bags = new Map<string, PlanBag[]>();
  for (let row = 0; row < read.rows('bag'); row++) {
    const name = read.text('bag', row);
    if (name === null || name === '') continue;
    const rider = read.text('bag_rider', row) ?? '';
    const held = bags.get(rider) ?? [];
    held.push({
      name,
      mass_kg: orNone(read.figure('bag_mass', row)),
      volume_L: orNone(read.figure('bag_volume', row)),
      packed_kg: orNought(read.figure('bag_packed_mass', row)),
      packed_L: orNought(read.figure('bag_packed_volume', row)),
    });
    bags.set(rider, held);
  }
  return bags;
}
