import { tryUnit } from '../formula/unit-text.ts';
import { convertFigure } from '../tables/convert-figure.ts';
import type { Cell, Entry, Measures, NotebookDocument, TableColumn, ValueContent } from './document.ts';
import type { Edit } from './edit.ts';
import { columnsOf } from './lookup.ts';

interface Swap {
  readonly from: string;
  readonly to: string;
  /** More decimals that the other unit needs for a figure to say as much. */
  readonly decimals: number;
}

/** Miles and pounds, with the gallon of the United States or of the United Kingdom. */
const imperial = (gallon: string, other: string): readonly Swap[] => [
  { from: 'km', to: 'mi', decimals: 0 },
  { from: 'kg', to: 'lb', decimals: 0 },
  { from: 'L', to: gallon, decimals: 1 },
  { from: other, to: gallon, decimals: 0 },
];

/** Names that are changed wherever they stand in a unit: km, km/h, L/(100 km), EUR/kg. */
const SWAPS: Readonly<Record<Measures, readonly Swap[]>> = {
  imperial: imperial('galUS', 'galUK'),
  imperial_uk: imperial('galUK', 'galUS'),
  metric: [
    { from: 'mi', to: 'km', decimals: 0 },
    { from: 'lb', to: 'kg', decimals: 0 },
    { from: 'galUS', to: 'L', decimals: -1 },
    { from: 'galUK', to: 'L', decimals: -1 },
  ],
};

const TO_INCHES: readonly Swap[] = [{ from: 'mm', to: 'inch', decimals: 2 }];

/** Changed only where they are the whole unit: a wear rate stays in the gauge's own measure. */
const WHOLE_SWAPS: Readonly<Record<Measures, readonly Swap[]>> = {
  imperial: TO_INCHES,
  imperial_uk: TO_INCHES,
  metric: [
    { from: 'inch', to: 'mm', decimals: -2 },
    { from: 'in', to: 'mm', decimals: -2 },
  ],
};

interface NewUnit {
  readonly unit: string;
  readonly extraDecimals: number;
}

/**
 * The unit in the other system of measures; null when it has none of the names concerned.
 *
 * @example otherMeasure('1/(1000 km)', 'imperial') // { unit: '1/(1000 mi)', extraDecimals: 0 }
 */
export function otherMeasure(unit: string, to: Measures): NewUnit | null {
  const whole = WHOLE_SWAPS[to].find((swap) => swap.from === unit.trim());
  if (whole !== undefined) return { unit: whole.to, extraDecimals: whole.decimals };
  let extraDecimals = 0;
  const changed = unit.replace(/[A-Za-z]+/g, (name) => {
    const swap = SWAPS[to].find((each) => each.from === name);
    if (swap === undefined) return name;
    extraDecimals += unit.trim() === name ? swap.decimals : 0;
    return swap.to;
  });
  return changed === unit ? null : { unit: changed, extraDecimals };
}

/**
 * One step that shows the whole notebook in metric or in imperial measures: entered columns and values with a
 * length, mass, volume or wear-rate unit are converted, figures and bounds with them, and worked columns and
 * formulas are shown in the other unit. Formulas stay as they are: their units are checked, not assumed. Text
 * that could not be read as a figure stays as it was typed.
 */
export function convertMeasures(document: NotebookDocument, to: Measures): Edit {
  const edits = document.cells.flatMap((cell, at) => convertCell(cell, at, to));
  const label =
    to === 'metric'
      ? 'Change to kilometres, millimetres, kilograms and litres'
      : 'Change to miles, inches, pounds and gallons';
  return { kind: 'group', label, edits };
}

function convertCell(cell: Cell, at: number, to: Measures): Edit[] {
  if (cell.kind === 'value') {
    const after = convertContent(cell.content, to);
    return after === null ? [] : [{ kind: 'value', cell: cell.id, before: cell.content, after }];
  }
  if (cell.kind === 'formula') {
    const next = cell.unit === undefined ? null : otherMeasure(cell.unit, to);
    if (next === null) return [];
    const item = { ...cell, ...inUnit(next, cell.decimals) };
    return [{ kind: 'cell', id: cell.id, before: { item: cell, at }, after: { item, at } }];
  }
  return columnsOf(cell).flatMap((column, place): Edit[] => {
    const item = convertColumn(column, to);
    if (item === null) return [];
    return [
      {
        kind: 'column',
        cell: cell.id,
        id: column.id,
        before: { item: column, at: place },
        after: { item, at: place },
      },
    ];
  });
}

function inUnit(next: NewUnit, decimals: number | undefined): { unit: string; decimals?: number } {
  if (decimals === undefined) return { unit: next.unit };
  return { unit: next.unit, decimals: Math.max(0, Math.min(12, decimals + next.extraDecimals)) };
}

/** How figures are converted; null when one of the units is none that we know: then nothing is touched. */
function converter(from: string, to: string): ((figure: number) => number) | null {
  const [fromUnit, toUnit] = [tryUnit(from), tryUnit(to)];
  return fromUnit === null || toUnit === null ? null : (figure) => convertFigure(figure, fromUnit, toUnit);
}

function convertColumn(column: TableColumn, to: Measures): TableColumn | null {
  const next = column.unit === undefined ? null : otherMeasure(column.unit, to);
  if (next === null) return null;
  if (column.kind === 'worked') return { ...column, ...inUnit(next, column.decimals) };
  const convert = converter(column.unit!, next.unit);
  if (column.kind !== 'number' || convert === null) return null;
  const entries = column.entries.map((entry): Entry => (typeof entry === 'number' ? convert(entry) : entry));
  return { ...column, ...inUnit(next, column.decimals), entries };
}

function convertContent(content: ValueContent, to: Measures): ValueContent | null {
  if (content.type !== 'number') return null;
  const next = otherMeasure(content.unit, to);
  const convert = next === null ? null : converter(content.unit, next.unit);
  if (next === null || convert === null) return null;
  const converted: Record<string, number> = {};
  for (const field of ['low', 'high', 'step'] as const) {
    const figure = content[field];
    if (figure !== undefined) converted[field] = convert(figure);
  }
  const value = typeof content.value === 'number' ? convert(content.value) : content.value;
  return { ...content, ...converted, ...inUnit(next, content.decimals), value };
}
