import { showUnit } from '../../src/formula/show.ts';
import type { FormulaCell } from '../../src/notebook/document.ts';
import type { LiveNotebook } from '../../src/notebook/live-notebook.ts';
import { unitShape } from '../shared/unit-words.ts';

/**
 * The check of a formula's units in words: `km × plain number = km, units agree`; just `in EUR` where the
 * formula is too long to be read that way; '' for a text or while there is a fault.
 */
export function unitCheck(notebook: LiveNotebook, cell: FormulaCell): string {
  const type = notebook.typeOf(cell.name);
  if (type?.kind !== 'number' || notebook.faultsOf(cell.id).length > 0) return '';
  const result = type.unit?.text ?? '';
  const terms = notebook.explain(cell.name, 0).terms;
  const shape = unitShape(cell.formula, (span) => {
    const term = terms.find((one) => one.from === span.from && one.to === span.to);
    const unit = term && notebook.typeOf(term.node)?.unit;
    return unit === undefined || unit === null ? undefined : showUnit(unit.text);
  });
  const shown = result ? showUnit(result) : 'plain number';
  if (shape !== null && shape !== shown) return `${shape} = ${shown}, units agree`;
  return result ? `in ${shown}, units agree` : '';
}
