import type { Highs, Model, ModelData, ModelStatusCode } from 'highs';
import type { Programme, ProgrammeAnswer, SolveOptions, SolveProgramme } from '../programme.ts';
import { type HighsSource, loadHighs } from './load-highs.ts';

/**
 * Both gaps 0: HiGHS stops by itself at a relative gap of 1e-4, which is a cent and more of a plan's cost.
 * Rows are held to 1e-9 and not to its usual 1e-6 or 1e-7, which a large factor such as the sum for free
 * freight would blow up to a visible part of a cent.
 */
const EXACT = {
  output_flag: false,
  mip_rel_gap: 0,
  mip_abs_gap: 0,
  mip_feasibility_tolerance: 1e-9,
  primal_feasibility_tolerance: 1e-9,
  dual_feasibility_tolerance: 1e-9,
} as const;

/**
 * Plans are small and tight: cuts at the root pay, cuts at every node and fresh starts cost more than they
 * save (a third to a half of the time, measured on plans of 30 parts with five limits that bind).
 */
const QUICK = { mip_allow_restart: false, mip_allow_cut_separation_at_nodes: false } as const;

/** `primal_solution_status` of columns that keep all bounds and rows. */
const FEASIBLE_POINT = 2;

/** Solves programmes by HiGHS in this thread, which does nothing else meanwhile: in a page, use the worker. */
export function highsSolver(source: HighsSource = {}): SolveProgramme {
  return async (programme, options) => solveProgramme(await loadHighs(source), programme, options);
}

/**
 * Solves one programme to proven optimality or until its time is up.
 * @returns `optimal` only where HiGHS says so. Where it stops early, the best columns, or null if it has none
 */
export function solveProgramme(highs: Highs, programme: Programme, options: SolveOptions): ProgrammeAnswer {
  if (programme.cost.length === 0) return withoutColumns(programme);
  const model = highs.createModel(modelData(programme));
  try {
    model.options.set({ ...EXACT, ...QUICK, time_limit: options.timeLimitS });
    if (options.start) model.setSolution({ colValue: options.start });
    const { modelStatus } = model.run();
    return answerOf(highs, model, modelStatus);
  } finally {
    model.dispose();
  }
}

/** HiGHS has no answer to a programme without columns: whether nothing at all keeps the rows. */
function withoutColumns({ rows }: Programme): ProgrammeAnswer {
  const holds = rows.every(({ lower, upper }) => lower <= 0 && upper >= 0);
  return holds
    ? { status: 'optimal', columns: [], cost: 0, bound: 0 }
    : { status: 'infeasible', columns: null, cost: Number.NaN, bound: Number.POSITIVE_INFINITY };
}

function answerOf(highs: Highs, model: Model, status: ModelStatusCode): ProgrammeAnswer {
  const { optimal, infeasible, unboundedOrInfeasible } = highs.constants.modelStatus;
  // Every column of a plan is bounded, or costs something: what has no least cost has no solution.
  if (status === infeasible || status === unboundedOrInfeasible)
    return { status: 'infeasible', columns: null, cost: Number.NaN, bound: Number.POSITIVE_INFINITY };
  if (model.info.get('primal_solution_status') !== FEASIBLE_POINT)
    return { status: 'stopped', columns: null, cost: Number.NaN, bound: Number.NEGATIVE_INFINITY };
  return {
    status: status === optimal ? 'optimal' : 'stopped',
    columns: [...model.getSolution().colValue],
    cost: model.getObjectiveValue(),
    bound: Number(model.info.get('mip_dual_bound')),
  };
}

/** Row by row, as the programme has it. */
function modelData({ cost, lower, upper, whole, rows }: Programme): ModelData {
  const starts = [0];
  const indices: number[] = [];
  const values: number[] = [];
  for (const { terms } of rows) {
    for (const [column, factor] of terms) {
      indices.push(column);
      values.push(factor);
    }
    starts.push(indices.length);
  }
  const numCols = cost.length;
  const numRows = rows.length;
  return {
    numCols,
    numRows,
    colCost: cost,
    colLower: lower,
    colUpper: upper,
    rowLower: rows.map((row) => row.lower),
    rowUpper: rows.map((row) => row.upper),
    matrix: { format: 'csr', numRows, numCols, starts, indices, values },
    integrality: Int32Array.from(whole, (isWhole) => (isWhole ? 1 : 0)),
  };
}
