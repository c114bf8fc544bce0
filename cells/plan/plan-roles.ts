import { html, type TemplateResult } from 'lit';
import { OPTIONAL_PLAN_ROLES, type PlanCell, type PlanRole } from '../../src/notebook/document.ts';
import { replaceCell } from '../../src/notebook/edits.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { type ReadSetting, readsSettings } from '../shared/reads-settings.ts';
import { settingLine } from '../shared/setting-line.ts';

const LABELS: Readonly<Record<PlanRole, string>> = {
  cost: 'Expected cost',
  cash: 'Cash of a call',
  need: 'New pieces',
  mass: 'Pack weight',
  volume: 'Pack volume',
  hours: 'Shed hours',
  strand: 'Chance of a recovery',
  kind: 'Kind of call',
  sent_out: 'Sent to a workshop',
  on_hand: 'On hand',
  set: 'Changed with',
  stock: 'What offers call it',
  rider: 'Whose bike',
  part_job: 'Comes off for it',
  rather_bag: 'Rather in the bag',
  offer: 'Part number',
  offer_supplier: 'Offer’s supplier',
  offer_fits: 'Offer fits',
  offer_pieces: 'Pieces in a pack',
  offer_price: 'Price of a pack',
  offer_days: 'Lead time',
  supplier: 'Supplier',
  freight: 'Freight',
  free_from: 'Freight free from',
  kit: 'Kit',
  kit_part: 'Kit covers',
  kit_pieces: 'Pieces in the kit',
  work: 'Work sent out',
  work_part: 'New in that work',
  job: 'Comes off once',
  job_setup: 'Time that takes',
  bag: 'Bag',
  bag_rider: 'Bag’s rider',
  bag_mass: 'Bag may weigh',
  bag_volume: 'Bag holds',
  bag_packed_mass: 'Weight in it already',
  bag_packed_volume: 'Volume in it already',
  pack_rider: 'Rider',
  pack_mass: 'Rider’s pack, weight',
  pack_volume: 'Rider’s pack, volume',
  cash_limit: 'Limit of cash',
  mass_limit: 'Limit of weight',
  volume_limit: 'Limit of volume',
  hours_limit: 'Limit of shed hours',
  risk_limit: 'Limit of recoveries',
  days_left: 'Days to the cut-off',
  margin_days: 'Days in hand',
  hour_value: 'An hour’s worth',
  rate: 'Wear rate',
  recovery: 'Cost of a recovery',
  waiting: 'Cost of waiting',
};

/** What a plan can be told to read, those it cannot do without marked. */
export const PLAN_SETTINGS: readonly ReadSetting<PlanRole>[] = (Object.keys(LABELS) as PlanRole[]).map(
  (role) => ({
    role,
    label: OPTIONAL_PLAN_ROLES.includes(role) ? LABELS[role] : `${LABELS[role]}, needed`,
  }),
);

/** The calls that it plans, and which column or figure plays which part; each change is one edit. */
export function planSettings(notebook: LiveNotebook, cell: PlanCell): TemplateResult {
  const { document } = notebook;
  const keep = (after: PlanCell): void => notebook.apply(replaceCell(notebook.document, cell.id, after));
  const calls = document.cells.flatMap((one) => (one.kind === 'calls' ? one.name : []));
  const known = calls.includes(cell.calls) ? calls : [cell.calls, ...calls];
  const reads = Object.fromEntries(Object.entries(cell.reads).filter(([, name]) => name !== '')) as Partial<
    Record<PlanRole, string>
  >;
  return html`<div class="settings reads">${settingLine({
    label: 'Plans the calls of',
    entry: cell.calls,
    column: { kind: 'choice', options: known },
    keep: (after) => keep({ ...cell, calls: after === null ? '' : String(after) }),
  })}</div>
    ${readsSettings(PLAN_SETTINGS, reads, document, (role, name) =>
      keep({ ...cell, reads: { ...cell.reads, [role]: name } }),
    )}`;
}
