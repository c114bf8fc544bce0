import { all, create, type EvalFunction, type FactoryFunctionMap } from 'mathjs';
import { checkFormula } from '../../src/formula/check/check-formula.ts';
import type { Column } from '../../src/formula/column.ts';
import { isFault } from '../../src/formula/fault.ts';
import type { Known, Meaning, Scope } from '../../src/formula/scope.ts';
import { parseUnit } from '../../src/formula/unit-text.ts';
import { type RatioResult, ratio } from './support.ts';

const ROWS = 10_000;

/** Eight worked columns, each reading what stands before it; [name, formula, the same in mathjs]. */
const WORKED: readonly (readonly [string, string])[] = [
  ['hard_km', 'km * harshness'],
  ['worn', 'rate * hard_km'],
  ['left_now', 'limit - now'],
  ['left_end', 'left_now - worn'],
  ['share', '1 - left_end / limit'],
  ['price', 'list * (1 + tax) / pack'],
  ['landed', 'price * 1.08 + 2'],
  ['cost', 'share > 0.9 ? landed : landed * share'],
];

const PLAIN = { kind: 'number', unit: parseUnit('') } as const;

function inputs(): Map<string, Float64Array> {
  const names = ['km', 'harshness', 'rate', 'limit', 'now', 'list', 'tax', 'pack'];
  // A fixed sequence (Park and Miller 1988), so that every run sums the same figures.
  let seed = 1;
  const next = (): number => {
    seed = (seed * 48271) % 2147483647;
    return seed / 2147483647;
  };
  return new Map(names.map((name) => [name, Float64Array.from({ length: ROWS }, () => 1 + next())]));
}

class FlatScope implements Scope {
  readonly here = 't';
  readonly money = 'EUR';
  private readonly known: ReadonlySet<string>;
  constructor(known: ReadonlySet<string>) {
    this.known = known;
  }
  plain(name: string): readonly Meaning[] {
    return this.known.has(name) ? [{ node: name, table: 't', known: PLAIN as Known, words: name }] : [];
  }
  member(): null {
    return null;
  }
  isTable(): boolean {
    return false;
  }
  plainNames(): Iterable<string> {
    return this.known;
  }
  columnNames(): Iterable<string> {
    return [];
  }
  tableNames(): Iterable<string> {
    return [];
  }
}

function throughFormulas(given: Map<string, Float64Array>): () => unknown {
  const known = new Set([...given.keys(), ...WORKED.map(([name]) => name)]);
  const checked = WORKED.map(([name, formula]) => {
    const held = checkFormula(formula, new FlatScope(known));
    if (isFault(held)) throw new Error(`${name}: ${held.message}`);
    return [name, held] as const;
  });
  const columns = new Map<string, Column>(
    [...given].map(([name, values]) => [name, { kind: 'number', values, faults: null }]),
  );
  return () => {
    for (const [name, held] of checked)
      columns.set(name, held.run(held.reads.map((read) => columns.get(read) as Column)) as Column);
    return columns.get('cost');
  };
}

function byHand(given: Map<string, Float64Array>): () => unknown {
  const column = (name: string): Float64Array => given.get(name) as Float64Array;
  const [km, harshness, rate, limit] = [column('km'), column('harshness'), column('rate'), column('limit')];
  const [now, list, tax, pack] = [column('now'), column('list'), column('tax'), column('pack')];
  return () => {
    const out = WORKED.map(() => new Float64Array(ROWS));
    const [hardKm, worn, leftNow, leftEnd, share, price, landed, cost] = out as [
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
      Float64Array,
    ];
    for (let i = 0; i < ROWS; i++) hardKm[i] = (km[i] as number) * (harshness[i] as number);
    for (let i = 0; i < ROWS; i++) worn[i] = (rate[i] as number) * (hardKm[i] as number);
    for (let i = 0; i < ROWS; i++) leftNow[i] = (limit[i] as number) - (now[i] as number);
    for (let i = 0; i < ROWS; i++) leftEnd[i] = (leftNow[i] as number) - (worn[i] as number);
    for (let i = 0; i < ROWS; i++) share[i] = 1 - (leftEnd[i] as number) / (limit[i] as number);
    for (let i = 0; i < ROWS; i++)
      price[i] = ((list[i] as number) * (1 + (tax[i] as number))) / (pack[i] as number);
    for (let i = 0; i < ROWS; i++) landed[i] = (price[i] as number) * 1.08 + 2;
    for (let i = 0; i < ROWS; i++)
      cost[i] =
        (share[i] as number) > 0.9 ? (landed[i] as number) : (landed[i] as number) * (share[i] as number);
    return cost;
  };
}

function rowByRow(given: Map<string, Float64Array>): () => unknown {
  const math = create(all as FactoryFunctionMap);
  const compiled = WORKED.map(
    ([name, formula]) => [name, math.compile(formula) as unknown as EvalFunction] as const,
  );
  return () => {
    const out = new Float64Array(ROWS);
    for (let i = 0; i < ROWS; i++) {
      const scope = new Map<string, number>([...given].map(([name, values]) => [name, values[i] as number]));
      for (const [name, code] of compiled) scope.set(name, code.evaluate(scope) as number);
      out[i] = scope.get('cost') as number;
    }
    return out;
  };
}

/** Worked columns at 10,000 rows x 8, against hand-written loops and against the plain library. */
export async function bench(): Promise<readonly RatioResult[]> {
  const given = inputs();
  return [
    await ratio(
      'worked columns, 8 x 10,000, against hand-written loops',
      throughFormulas(given),
      byHand(given),
    ),
    await ratio(
      'worked columns, 8 x 10,000, against mathjs row by row',
      throughFormulas(given),
      rowByRow(given),
      { rounds: 11, warmUps: 2 },
    ),
  ];
}
