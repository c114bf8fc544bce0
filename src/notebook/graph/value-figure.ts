import type { Column } from '../../formula/column.ts';
import type { Fault } from '../../formula/fault.ts';
import { showNumber } from '../../formula/show.ts';
import type { ValueCell } from '../document.ts';
import { figureOfEntry, unreadEntry } from './entered-column.ts';

/** The figure of a value cell, or why it cannot be used. */
export function valueFigure(cell: ValueCell): Column | Fault {
  const { content } = cell;
  if (content.type === 'choice') {
    return content.value === null ? empty(cell) : { kind: 'text', values: [content.value], faults: null };
  }
  const kind = content.type;
  const figure = figureOfEntry(kind, content.value);
  if (figure === null) return unreadEntry(kind, content.value);
  if (Number.isNaN(figure)) return empty(cell);
  const outside = content.type === 'number' ? outOfBounds(figure, content.low, content.high) : null;
  return outside ?? { kind, values: Float64Array.of(figure), faults: null };
}

function empty(cell: ValueCell): Fault {
  return {
    kind: 'missing-input',
    message: `${cell.title || cell.name} is empty.`,
    mend: 'Fill it in.',
    place: {},
  };
}

function outOfBounds(figure: number, low: number | undefined, high: number | undefined): Fault | null {
  if (low !== undefined && figure < low) {
    return {
      kind: 'domain',
      message: `${showNumber(figure)} is below ${showNumber(low)}, the least it can be.`,
      mend: `Type ${showNumber(low)} or more.`,
      place: {},
    };
  }
  if (high !== undefined && figure > high) {
    return {
      kind: 'domain',
      message: `${showNumber(figure)} is above ${showNumber(high)}, the most it can be.`,
      mend: `Type ${showNumber(high)} or less.`,
      place: {},
    };
  }
  return null;
}
