import { showNumber } from '../../src/formula/show.ts';
import { cellWords, type RiskMap, type RiskPart } from './risk-reading.ts';

/** Widths in rem, so that they follow the reader's text size. A leg has room for two digits at least. */
const LEAST_LEG_REM = 1.35;
const PART_REM = 10.6;
const TOTAL_REM = 3.7;

/** The likeliest leg is framed from this chance on: below it no figure stands in the cell. */
const LEAST_PEAK = 0.005;

/**
 * The map as a table, legs drawn to length. Built by hand rather than by a template: forty parts on sixty legs
 * are 2,400 cells, and most of them hold nothing.
 *
 * Rows carry `data-part`, the part's place in the map, and a leg's cell stands one behind its place, for the one
 * listener on the table.
 */
export function riskGrid(map: RiskMap, parts: readonly RiskPart[], caption: string): HTMLTableElement {
  const table = document.createElement('table');
  table.className = 'heat';
  add(table, 'caption', 'sr', caption);
  table.append(columnsOf(map), headOf(map));
  const body = document.createElement('tbody');
  if (map.legs.some((leg) => !Number.isNaN(leg.far))) body.append(helpRow(map));
  const blank = blankRow(map.legs.length);
  parts.forEach((part, at) => {
    body.append(partRow(map, part, at, blank));
  });
  table.append(body);
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

function columnsOf(map: RiskMap): HTMLElement {
  const group = document.createElement('colgroup');
  const lengths = map.legs.map((leg) => (leg.length > 0 ? leg.length : 1));
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  add(group, 'col').style.width = `${PART_REM}rem`;
  for (const length of lengths) {
    const share = length / whole;
    // Shares of what the page has left; a long route scrolls rather than being squeezed.
    add(group, 'col').style.width =
      `max(${LEAST_LEG_REM}rem, calc((100% - ${PART_REM + 2 * TOTAL_REM}rem) * ${share.toFixed(4)}))`;
  }
  for (let total = 0; total < 2; total++) add(group, 'col').style.width = `${TOTAL_REM}rem`;
  return group;
}

function headOf(map: RiskMap): HTMLElement {
  const head = document.createElement('thead');
  const row = add(head, 'tr');
  const corner = add(row, 'th', '', 'Part');
  corner.scope = 'col';
  map.legs.forEach((leg) => {
    const cell = add(row, 'th', 'leg');
    cell.scope = 'col';
    const words = add(cell, 'span', '', leg.place);
    words.title = leg.name;
  });
  for (const [words, unit] of [
    [map.calls === 'left' ? 'If left' : 'As called', '%'],
    ['At stake', map.money],
  ]) {
    const cell = add(row, 'th', 'tot', words);
    cell.scope = 'col';
    add(cell, 'span', 'u', unit);
  }
  return head;
}

/** Distance to help, as steps over the legs. */
function helpRow(map: RiskMap): HTMLElement {
  const row = document.createElement('tr');
  row.className = 'help';
  const head = add(row, 'th', '', `Help is, ${map.farUnit}`);
  head.scope = 'row';
  const farthest = Math.max(1, ...map.legs.map((leg) => (Number.isNaN(leg.far) ? 0 : leg.far)));
  for (const leg of map.legs) {
    const cell = add(row, 'td');
    const step = add(cell, 'i');
    step.style.height = `${Math.round((26 * (Number.isNaN(leg.far) ? 0 : leg.far)) / farthest)}px`;
    add(cell, 'span', 'sr', Number.isNaN(leg.far) ? 'not told' : showNumber(leg.far, 0));
  }
  add(row, 'td', 'tot');
  add(row, 'td', 'tot');
  return row;
}

function partRow(map: RiskMap, part: RiskPart, at: number, blank: HTMLTableRowElement): HTMLElement {
  const row = blank.cloneNode(true) as HTMLTableRowElement;
  row.dataset.part = String(at);
  const boxes = row.children;
  boxes[0]!.textContent = part.name;
  let peak = -1;
  let most = LEAST_PEAK;
  part.cells.forEach((cell, leg) => {
    if (cell.chance > most) [peak, most] = [leg, cell.chance];
    const words = cellWords(cell.chance);
    if (words !== '') boxes[leg + 1]!.textContent = words;
    if (cell.step > 0) boxes[leg + 1]!.setAttribute('data-h', String(cell.step));
  });
  if (peak >= 0) boxes[peak + 1]!.className = 'h peak';
  boxes[map.legs.length + 1]!.textContent = showNumber(Math.min(1, part.chance) * 100, 1);
  boxes[map.legs.length + 2]!.textContent = showNumber(part.cost, 0);
  return row;
}

/** One empty row, copied for every part. */
function blankRow(legs: number): HTMLTableRowElement {
  const row = document.createElement('tr');
  add(row, 'th').scope = 'row';
  for (let leg = 0; leg < legs; leg++) add(row, 'td', 'h');
  add(row, 'td', 'tot');
  add(row, 'td', 'tot');
  return row;
}
