import { html, nothing, type TemplateResult } from 'lit';
import { showNumber } from '../../src/formula/show.ts';
import { type PlanInstance, packerOf } from '../../src/plan/plan-instance.ts';
import type { SolvedPlan } from '../../src/plan/plan-result.ts';
import { type LimitRow, limitRows } from './plan-limits.ts';

/** One bag as the plan fills it. */
export interface BagRow {
  readonly rider: string;
  readonly bag: string;
  /** `Rear inner tube, 2`: parts whose spares go into it, with how many where there are several. */
  readonly spares: readonly string[];
  /** What was in it before any spare. */
  readonly packed_kg: number;
  readonly packed_L: number;
  readonly mass_kg: number;
  readonly volume_L: number;
  /** Its limits with what is used of them; null where it has none. */
  readonly mass: LimitRow | null;
  readonly volume: LimitRow | null;
}

/** The bags of all riders in the order of their table, each with the spares that the plan puts into it. */
export function bagRows(instance: PlanInstance, { plan, totals }: SolvedPlan): readonly BagRow[] {
  const rows = limitRows(instance, totals, null);
  const parts = new Map(instance.parts.map((part) => [part.name, part]));
  const packed = plan.chosen.flatMap((chosen) => {
    const call = instance.calls.find((one) => one.part === chosen.part && one.name === chosen.call);
    const part = parts.get(chosen.part);
    if (chosen.bag === null || call === undefined || part === undefined) return [];
    return [{ rider: packerOf(part, call), bag: chosen.bag, call }];
  });
  return instance.limits.packs.flatMap(({ rider, bags }) =>
    bags.map((bag): BagRow => {
      const total = totals.packs
        .find((pack) => pack.rider === rider)
        ?.bags.find(({ name }) => name === bag.name);
      const limit = (kind: LimitRow['kind']): LimitRow | null =>
        rows.find((row) => row.kind === kind && row.bag === bag.name && row.rider === rider) ?? null;
      const own = packed.filter((one) => one.rider === rider && one.bag === bag.name);
      return {
        rider,
        bag: bag.name,
        spares: own.map(({ call }) =>
          call.kind === 'carry' && call.need > 1 ? `${call.part}, ${call.need}` : call.part,
        ),
        packed_kg: bag.packed_kg,
        packed_L: bag.packed_L,
        mass_kg: total?.mass_kg ?? bag.packed_kg,
        volume_L: total?.volume_L ?? bag.packed_L,
        mass: limit('mass_kg'),
        volume: limit('volume_L'),
      };
    }),
  );
}

/** What goes into which bag, and what that makes of what it may weigh and hold. */
export function bagsView(rows: readonly BagRow[]): TemplateResult | typeof nothing {
  if (rows.length === 0) return nothing;
  const sum = (limit: LimitRow | null, used: number): unknown =>
    html`${showNumber(used, 2)}${limit === null ? nothing : html`<small class="limit"> of ${limit.limit}</small>`}`;
  return html`<section class="part flush" aria-labelledby="bags"><h3 id="bags">In the bags<span class="beside">with what is packed already</span></h3>
    <div class="scroll"><table class="bags"><caption class="sr">Spares by bag</caption>
      <thead><tr><th scope="col">Bag</th><th scope="col" class="num worked">Weight<span class="u">kg</span></th><th scope="col" class="num worked">Volume<span class="u">L</span></th></tr></thead>
      <tbody>${rows.map(
        (row) => html`<tr><th scope="row">${row.rider === '' ? nothing : `${row.rider}, `}${row.bag}
            <small>${row.spares.length === 0 ? 'no spares' : row.spares.join('; ')}</small></th>
          <td class="num worked ${row.mass?.level ?? ''}">${sum(row.mass, row.mass_kg)}</td>
          <td class="num worked ${row.volume?.level ?? ''}">${sum(row.volume, row.volume_L)}</td></tr>`,
      )}</tbody></table></div></section>`;
}
