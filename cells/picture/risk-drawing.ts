import { figureLines } from './digit-lines.ts';
import { headWords, helpSteps, MAP, placeIn, type RiskFrame, riskFrame, totalWords } from './risk-frame.ts';
import { type RiskMap, type RiskPart, wholePercent } from './risk-reading.ts';

const SVG = 'http://www.w3.org/2000/svg';

/** The likeliest leg is framed from this chance on: below it no figure stands in the cell. */
const LEAST_PEAK = 0.005;

/** Rows that are drawn in one turn: those that a screen shows first. The others follow, a turn for each so many. */
const ROWS_A_TURN = 20;

/** A cell of the drawing: the part's place among those drawn, and the leg's. */
export interface RiskPlace {
  readonly row: number;
  readonly leg: number;
}

interface DrawnRow {
  readonly group: SVGGElement;
  readonly what: RowContent;
  readonly at: number;
}

/**
 * The map of parts by legs, legs drawn to length. The shades of a row are a path for each step and its figures a
 * path for each ink, because forty parts on sixty legs as boxes of their own, with figures as texts, take the
 * browser a fifth of a second to lay out and to paint. An edit draws those rows again that it changed.
 */
export class RiskDrawing {
  readonly svg = make('svg', { class: 'map', 'aria-hidden': 'true' });
  readonly #head = this.svg.appendChild(make('g', { class: 'heads' }));
  readonly #totals = this.svg.appendChild(make('g', { class: 'heads' }));
  readonly #body = this.svg.appendChild(make('g', {}));
  readonly #ring = make('path', { class: 'ring' });
  #frame: RiskFrame | null = null;
  #stamp = '';
  #headed = '';
  #rows = new Map<string, DrawnRow>();
  #count = 0;
  /** The frame that the next rows wait for. */
  #next = 0;

  /**
   * @param roomPx room for the legs and the totals, beside the names of the parts
   * @param atOnce all rows in this turn, for paper
   */
  draw(map: RiskMap, parts: readonly RiskPart[], roomPx: number, scale: number, atOnce = false): void {
    cancelAnimationFrame(this.#next);
    const stamp = `${roomPx}|${scale}|${map.legs.map((leg) => `${leg.name},${leg.place},${leg.length},${leg.far}`).join(';')}`;
    let frame = this.#frame;
    if (frame === null || stamp !== this.#stamp) {
      frame = riskFrame(map.legs, roomPx, scale);
      this.#frame = frame;
      this.#stamp = stamp;
      this.#rows = new Map();
      this.#body.replaceChildren();
      this.#headed = '';
      drawHead(this.#head, map, frame);
    }
    const headed = `${map.calls}|${map.money}`;
    if (headed !== this.#headed) drawTotalHeads(this.#totals, map, frame);
    this.#headed = headed;
    const height = frame.top + frame.row * parts.length;
    setAll(this.svg, { width: frame.width, height, viewBox: `0 0 ${frame.width} ${height}` });
    this.#count = parts.length;
    this.#drawRows(frame, parts, atOnce ? parts.length : ROWS_A_TURN);
  }

  /** Draws as many changed rows as may be drawn now; the others keep what they showed until their turn. */
  #drawRows(frame: RiskFrame, parts: readonly RiskPart[], most: number): void {
    const rows = new Map<string, DrawnRow>();
    const fresh: SVGGElement[] = [];
    let isWhole = true;
    parts.forEach((part, at) => {
      const before = this.#rows.get(part.name);
      const what = rowContent(part);
      const isNow = before !== undefined && isSameRow(before.what, what);
      if (!isNow && fresh.length === most) {
        isWhole = false;
        if (before) {
          place(before.group, frame, at);
          rows.set(part.name, { ...before, at });
        }
        return;
      }
      const group = isNow ? before.group : buildRow(frame, part.name, what);
      if (!isNow) {
        fresh.push(group);
        before?.group.remove();
      }
      if (!isNow || before.at !== at) place(group, frame, at);
      rows.set(part.name, { group, what: isNow ? before.what : what, at });
    });
    for (const [name, { group }] of this.#rows) if (!rows.has(name)) group.remove();
    this.#body.append(...fresh);
    this.#rows = rows;
    if (isWhole) return;
    // After the frame that paints these.
    this.#next = requestAnimationFrame(() => {
      this.#next = requestAnimationFrame(() => this.#drawRows(frame, parts, most));
    });
  }

  /** The cell under a point of the window; null where there is none. */
  placeAt(clientX: number, clientY: number): RiskPlace | null {
    if (!this.#frame) return null;
    const { left, top, width } = this.svg.getBoundingClientRect();
    // On a page that is zoomed or printed the drawing may be smaller than its own measures.
    const zoom = width > 0 ? this.#frame.width / width : 1;
    const at = placeIn(this.#frame, (clientX - left) * zoom, (clientY - top) * zoom);
    return at && at.row < this.#count ? at : null;
  }

  /** Rings a cell; returns its left and right edge in px, null where no cell is ringed. */
  ring(at: RiskPlace | null): readonly [number, number] | null {
    const frame = this.#frame;
    if (!at || !frame || at.row >= this.#count) {
      this.#ring.remove();
      return null;
    }
    const [left, right] = [frame.edges[at.leg] ?? 0, frame.edges[at.leg + 1] ?? 0];
    const width = right - left - MAP.gap;
    const top = frame.top + at.row * frame.row;
    this.#ring.setAttribute('d', `M${left},${top}h${width}v${frame.box}h-${width}z`);
    if (!this.#ring.isConnected) this.svg.append(this.#ring);
    return [left, right];
  }
}

const place = (group: SVGGElement, frame: RiskFrame, at: number): void =>
  group.setAttribute('transform', `translate(0,${frame.top + at * frame.row})`);

/** Figures in three inks: on no shade, on a light one, on a dark one. */
const INKS = ['on-none', 'on-light', 'on-dark'] as const;
const inkOf = (step: number): 0 | 1 | 2 => (step === 0 ? 0 : step < 4 ? 1 : 2);

/** All that a row shows. */
interface RowContent {
  /** By leg: the step of the shade, and the chance in whole percent. */
  readonly steps: readonly number[];
  readonly percents: readonly number[];
  /** The likeliest leg; -1 where none is likely. */
  readonly peak: number;
  readonly totals: readonly [string, string];
}

function rowContent({ cells, chance, cost }: RiskPart): RowContent {
  let peak = -1;
  let most = LEAST_PEAK;
  cells.forEach((cell, leg) => {
    if (cell.chance > most) [peak, most] = [leg, cell.chance];
  });
  return {
    steps: cells.map((cell) => cell.step),
    percents: cells.map((cell) => wholePercent(cell.chance)),
    peak,
    totals: totalWords(chance, cost),
  };
}

const isSameRow = (a: RowContent, b: RowContent): boolean =>
  a.peak === b.peak &&
  a.totals.every((total, at) => total === b.totals[at]) &&
  a.steps.length === b.steps.length &&
  a.steps.every((step, leg) => step === b.steps[leg] && a.percents[leg] === b.percents[leg]);

function buildRow(frame: RiskFrame, name: string, what: RowContent): SVGGElement {
  const shades = ['', '', '', '', '', ''];
  const figures = ['', '', ''];
  const middle = frame.box / 2 / frame.scale;
  what.steps.forEach((step, leg) => {
    shades[step] += frame.boxes[leg] ?? '';
    const percent = what.percents[leg] ?? 0;
    if (percent > 0) figures[inkOf(step)] += figureLines(String(percent), frame.middles[leg] ?? 0, middle);
  });
  const group = make('g', { 'data-part': name });
  shades.forEach((d, step) => {
    if (d !== '') group.append(make('path', { d, 'data-h': step }));
  });
  figures.forEach((d, ink) => {
    if (d === '') return;
    const lines = make('path', { class: `digits ${INKS[ink]}`, d });
    if (frame.scale !== 1) lines.setAttribute('transform', `scale(${frame.scale})`);
    group.append(lines);
  });
  if (what.peak >= 0) group.append(make('path', { class: 'peak', d: frame.boxes[what.peak]! }));
  const foot = frame.box / 2 + 0.36 * MAP.text * frame.scale;
  what.totals.forEach((total, at) => {
    group.append(text(total, { class: 'total', x: frame.totals[at]!, y: foot }));
  });
  return group;
}

function drawHead(head: SVGGElement, map: RiskMap, frame: RiskFrame): void {
  const { scale, edges } = frame;
  const foot = MAP.head * scale - 6;
  const words = map.legs.map((leg, at) => {
    const middle = (edges[at]! + edges[at + 1]! - MAP.gap) / 2 + 0.34 * MAP.text * scale;
    const name = text(headWords(leg.place), { transform: `translate(${middle},${foot}) rotate(-90)` });
    const title = document.createElementNS(SVG, 'title');
    title.textContent = leg.name;
    name.append(title);
    return name;
  });
  const lines = edges.map((edge) => `M${edge - MAP.gap / 2},4V${frame.top - MAP.gap}`).join('');
  const steps = map.legs.some((leg) => !Number.isNaN(leg.far))
    ? [make('path', { class: 'help', d: helpSteps(map.legs, frame) })]
    : [];
  head.replaceChildren(make('path', { class: 'lines', d: lines }), ...steps, ...words);
}

function drawTotalHeads(heads: SVGGElement, map: RiskMap, frame: RiskFrame): void {
  const line = 15 * frame.scale;
  const foot = MAP.head * frame.scale - 6;
  const words = [
    [map.calls === 'left' ? 'If left' : 'As called', '%'],
    ['At stake', map.money],
  ];
  heads.replaceChildren(
    ...words.flatMap(([name = '', unit = ''], at) => [
      text(name, { class: 'total', x: frame.totals[at]!, y: foot - line }),
      text(unit, { class: 'total unit', x: frame.totals[at]!, y: foot }),
    ]),
  );
}

type Attributes = Readonly<Record<string, string | number>>;

function make<K extends keyof SVGElementTagNameMap>(tag: K, attributes: Attributes): SVGElementTagNameMap[K] {
  const element = document.createElementNS(SVG, tag);
  setAll(element, attributes);
  return element;
}

function setAll(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    const words = String(value);
    if (element.getAttribute(name) !== words) element.setAttribute(name, words);
  }
}

function text(words: string, attributes: Attributes): SVGTextElement {
  const element = make('text', attributes);
  element.textContent = words;
  return element;
}
