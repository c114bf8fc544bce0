import {
  type NotebookDocument,
  OPTIONAL_PLAN_ROLES,
  PLAN_ROLES,
  type PlanCell,
  type PlanRole,
} from '../../notebook/document.ts';

/** Names of columns and figures under which each role is usually found, the first that is there is taken. */
const USUAL: Readonly<Record<PlanRole, readonly string[]>> = {
  cost: ['expected', 'cost', 'expected_cost'],
  cash: ['cash'],
  need: ['need'],
  mass: ['pack_kg', 'mass'],
  volume: ['pack_L', 'volume'],
  hours: ['hours', 'shed_hours'],
  strand: ['strand'],
  kind: ['kind'],
  sent_out: ['sent_out'],
  on_hand: ['on_hand'],
  stock: ['stock', 'like'],
  rider: ['rider'],
  part_job: ['job', 'opens'],
  rather_bag: ['bag'],
  set: ['changed_with'],
  offer: ['offer', 'number'],
  offer_supplier: ['supplier'],
  offer_fits: ['fits', 'part'],
  offer_pieces: ['pack', 'pieces'],
  offer_price: ['pack_price', 'price'],
  offer_days: ['lead', 'lead_days'],
  supplier: ['supplier'],
  freight: ['freight_here', 'freight'],
  free_from: ['free_from_here', 'free_from'],
  kit: ['kit'],
  kit_part: ['part'],
  kit_pieces: ['pieces'],
  work: ['work'],
  work_part: ['part'],
  job: ['job'],
  job_setup: ['setup'],
  bag: ['bag'],
  bag_rider: ['rider'],
  bag_mass: ['mass_limit', 'holds_kg'],
  bag_volume: ['volume_limit', 'holds_L'],
  bag_packed_mass: ['packed_mass', 'packed_kg'],
  bag_packed_volume: ['packed_volume', 'packed_L'],
  pack_rider: ['rider'],
  pack_mass: ['mass_limit'],
  pack_volume: ['volume_limit'],
  cash_limit: ['cash_limit'],
  mass_limit: ['pack_mass_limit', 'pack_kg'],
  volume_limit: ['pack_volume_limit', 'pack_litres'],
  hours_limit: ['shed_hours_limit', 'shed_hours'],
  risk_limit: ['trip_risk_limit'],
  days_left: ['days_left'],
  margin_days: ['arrival_margin'],
  hour_value: ['hour_value'],
  rate: ['rate'],
  recovery: ['recovery'],
  waiting: ['wait_cost'],
};

/** Tables that the offers, suppliers and kits stand in. */
const TABLES: Readonly<Partial<Record<PlanRole, readonly string[]>>> = {
  offer: ['prices', 'offers'],
  offer_supplier: ['prices', 'offers'],
  offer_fits: ['prices', 'offers'],
  offer_pieces: ['prices', 'offers'],
  offer_price: ['prices', 'offers'],
  offer_days: ['prices', 'offers'],
  supplier: ['suppliers'],
  freight: ['suppliers'],
  free_from: ['suppliers'],
  kit: ['kits'],
  kit_part: ['kits'],
  kit_pieces: ['kits'],
  work: ['works'],
  work_part: ['works'],
  job: ['jobs'],
  job_setup: ['jobs'],
  bag: ['bags'],
  bag_rider: ['bags'],
  bag_mass: ['bags'],
  bag_volume: ['bags'],
  bag_packed_mass: ['bags'],
  bag_packed_volume: ['bags'],
  pack_rider: ['riders'],
  pack_mass: ['riders'],
  pack_volume: ['riders'],
  recovery: ['route', 'legs'],
  waiting: ['ride'],
};

/** A plan of the first calls cell, its columns found by their usual names; or what the notebook needs first. */
export function newPlan(
  document: NotebookDocument,
  id: string,
  name: string,
): { readonly cell: PlanCell } | { readonly needs: string } {
  const calls = document.cells.find((cell) => cell.kind === 'calls');
  if (calls === undefined) return { needs: 'A plan chooses among calls; add a calls card first.' };
  const pairing = document.cells.find((cell) => cell.kind === 'pairing' && cell.name === calls.pairing);
  const parts = pairing?.kind === 'pairing' ? pairing.left : '';
  const choices = pairing?.kind === 'pairing' ? pairing.right : '';
  const found = (role: PlanRole): string => {
    const tables = TABLES[role] ?? [calls.pairing, parts, choices];
    for (const wanted of USUAL[role])
      for (const table of tables)
        if (hasColumn(document, table, wanted)) {
          // Through the pairing all its parents' columns are read row by row.
          const of = role === 'need' || role === 'kind' || role === 'sent_out' ? calls.pairing : table;
          return `${of}.${wanted}`;
        }
    return USUAL[role].find((wanted) => isFigure(document, wanted)) ?? '';
  };
  const reads = Object.fromEntries(PLAN_ROLES.map((role) => [role, found(role)])) as PlanCell['reads'];
  const missing = PLAN_ROLES.filter((role) => reads[role] === '' && !OPTIONAL_PLAN_ROLES.includes(role));
  if (missing.length > 0)
    return {
      needs: `A plan also reads ${missing.map((role) => role.replaceAll('_', ' ')).join(', ')}: the worked example has a table for each.`,
    };
  return { cell: { kind: 'plan', id, title: 'Plan', name, calls: calls.name, reads } };
}

function hasColumn(document: NotebookDocument, table: string, column: string): boolean {
  return document.cells.some(
    (cell) => 'columns' in cell && cell.name === table && cell.columns.some((one) => one.name === column),
  );
}

const isFigure = (document: NotebookDocument, name: string): boolean =>
  document.cells.some((cell) => (cell.kind === 'value' || cell.kind === 'formula') && cell.name === name);
