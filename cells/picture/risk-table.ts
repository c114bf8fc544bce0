import { showNumber } from '../../src/formula/show.ts';
import { totalWords } from './risk-frame.ts';
import type { RiskMap } from './risk-reading.ts';

/**
 * The figures behind the map: for each part on each leg the chance in percent and what is at stake. Built by
 * hand, when it is asked for: forty parts on sixty legs are 2,400 cells.
 */
export function riskTable(map: RiskMap, caption: string): HTMLTableElement {
  const table = document.createElement('table');
  add(table, 'caption', 'sr', caption);
  const head = add(table.appendChild(document.createElement('thead')), 'tr');
  const corner = add(head, 'th', '', 'Part');
  corner.scope = 'col';
  add(corner, 'span', 'u', `chance in %, below it at stake in ${map.money}`);
  for (const leg of map.legs) add(head, 'th', 'num', leg.name).scope = 'col';
  for (const [words, unit] of [
    [map.calls === 'left' ? 'If left' : 'As called', '%'],
    ['At stake', map.money],
  ]) {
    const total = add(head, 'th', 'num', words);
    total.scope = 'col';
    add(total, 'span', 'u', unit);
  }
  const body = table.appendChild(document.createElement('tbody'));
  for (const part of map.parts) {
    const row = add(body, 'tr');
    add(row, 'th', '', part.name).scope = 'row';
    for (const cell of part.cells) {
      const box = add(row, 'td', 'num', Number.isNaN(cell.chance) ? '–' : showNumber(cell.chance * 100, 1));
      if (!Number.isNaN(cell.cost)) add(box, 'span', 'u', showNumber(cell.cost, 2));
    }
    for (const total of totalWords(part.chance, part.cost)) add(row, 'td', 'num', total);
  }
  return table;
}

function add<K extends keyof HTMLElementTagNameMap>(
  to: Element,
  tag: K,
  part = '',
  text = '',
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  if (part) element.className = part;
  if (text) element.textContent = text;
  to.append(element);
  return element;
}
