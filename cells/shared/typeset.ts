import { html, nothing, type TemplateResult } from 'lit';
import { parseFormula } from '../../src/formula/parse.ts';
import type { BinarySign, Span, Term } from '../../src/formula/term.ts';
import { hasTall, isFigure, onlyTable, tablesIn } from './typeset-terms.ts';

export interface TypesetOptions {
  /** A stretch of the text that is at fault; the sign or name that stands there is marked. */
  readonly mark?: { readonly from?: number; readonly to?: number };
  /** What to set in place of a name, by where it stands in the text: its figure, or a link. */
  readonly inPlace?: (span: Span) => unknown;
}

/** How tightly a sign binds; brackets are set where a looser sign stands inside a tighter one. */
const BINDS: Readonly<Record<BinarySign, number>> = {
  or: 1,
  and: 2,
  '==': 3,
  '!=': 3,
  '<': 3,
  '<=': 3,
  '>': 3,
  '>=': 3,
  '+': 4,
  '-': 4,
  '*': 5,
  '/': 5,
  '%': 5,
  '^': 7,
};
const UNARY = 6;
const CHOICE = 0;

const SIGN: Readonly<Partial<Record<BinarySign, string>>> = {
  '*': '×',
  '-': '−',
  '==': '=',
  '!=': '≠',
  '<=': '≤',
  '>=': '≥',
};

/** Longest text on either side of a fraction bar, in characters; longer ones stay on the line with a stroke. */
const MOST_IN_FRACTION = 44;

/**
 * A typed name as it is set: the first word in italics, the words after the underscores lowered.
 *
 * @example nameInType('wear_end') // <i>wear</i><sub>end</sub>
 */
export function nameInType(name: string): TemplateResult {
  const [first = '', ...rest] = name.split('_').filter(Boolean);
  return html`<i>${first}</i>${rest.length > 0 ? html`<sub>${rest.join(' ')}</sub>` : nothing}`;
}

/**
 * A formula set in type: underscores lowered, × and −, sums with what they run over, fractions, cases. Text
 * that cannot be read as a formula is set plainly, with the fault's place marked.
 *
 * @example typeset('sum(route.km) * harshness') // Σ over route, km × harshness
 */
export function typeset(formula: string, options: TypesetOptions = {}): TemplateResult {
  try {
    return html`${new Typesetter(formula, options).term(parseFormula(formula), 0)}`;
  } catch {
    return plainly(formula, options.mark);
  }
}

/** The text as typed, with the stretch at fault marked. */
export function plainly(formula: string, mark?: TypesetOptions['mark']): TemplateResult {
  if (mark?.from === undefined || mark.to === undefined || mark.to <= mark.from) return html`${formula}`;
  return html`${formula.slice(0, mark.from)}<span class="clash">${formula.slice(mark.from, mark.to)}</span>${formula.slice(mark.to)}`;
}

class Typesetter {
  readonly #text: string;
  readonly #options: TypesetOptions;
  /** The table a big sign runs over, while what stands behind it is set. */
  #table: string | null = null;

  constructor(text: string, options: TypesetOptions) {
    this.#text = text;
    this.#options = options;
  }

  /** One term; `binds` is how tightly the sign around it binds. */
  term(term: Term, binds: number): unknown {
    const set = this.#bare(term, binds);
    return this.#isMarked(term.span) ? html`<span class="clash">${set}</span>` : set;
  }

  #isMarked(span: Span): boolean {
    const { mark } = this.#options;
    return mark?.from === span.from && mark.to === span.to;
  }

  #bare(term: Term, binds: number): unknown {
    switch (term.type) {
      case 'number':
        return html`<span class="n">${this.#text.slice(term.span.from, term.span.to)}</span>`;
      case 'text':
        return html`<span class="str">“${term.value}”</span>`;
      case 'truth':
        return html`<span class="fn">${term.value ? 'yes' : 'no'}</span>`;
      case 'unit':
        return html`<span class="n">${term.unit.text}</span>`;
      case 'name':
        return this.#name(term.name, term.span);
      case 'member':
        return this.#member(term);
      case 'unary':
        return this.#bracketed(
          UNARY < binds,
          html`${term.sign === 'not' ? html`<span class="w">not</span>` : '−'}${this.term(term.term, UNARY)}`,
        );
      case 'convert':
        return html`${this.term(term.term, UNARY)}<span class="w">in</span><span class="n">${term.unit.text}</span>`;
      case 'choose':
        return this.#cases(term, binds);
      case 'call':
        return this.#call(term);
      case 'binary':
        return this.#binary(term, binds);
    }
  }

  #member(term: Extract<Term, { type: 'member' }>): unknown {
    const inPlace = this.#options.inPlace?.(term.span);
    if (inPlace !== undefined) return inPlace;
    const column = nameInType(term.column);
    return term.table === this.#table ? column : html`<i class="tbl">${term.table}</i>.<wbr />${column}`;
  }

  #name(name: string, span: Span): unknown {
    const inPlace = this.#options.inPlace?.(span);
    if (inPlace !== undefined) return inPlace;
    return name === 'missing' ? html`<span class="fn">missing</span>` : nameInType(name);
  }

  #bracketed(needed: boolean, inside: unknown): unknown {
    return needed ? html`(${inside})` : inside;
  }

  #binary(term: Extract<Term, { type: 'binary' }>, binds: number): unknown {
    const { left, right, sign } = term;
    if (right.type === 'unit') return html`${this.term(left, BINDS['*'])} ${this.term(right, 0)}`;
    // 10% is read as 10 / 100 with the percent sign as the place of both.
    if (sign === '/' && right.span === term.signSpan) return html`${this.term(left, BINDS['/'])} %`;
    const own = BINDS[sign];
    if (sign === '^')
      return this.#bracketed(own < binds, html`${this.term(left, own + 1)}<sup>${this.term(right, 0)}</sup>`);
    if (sign === '/' && this.#fits(left) && this.#fits(right) && binds <= UNARY) {
      return html`<span class="frac"><span>${this.term(left, 0)}</span><span>${this.#marked(term, this.term(right, 0))}</span></span>`;
    }
    const tighterRight = sign === '-' || sign === '/' || sign === '%' ? own + 1 : own;
    const word = sign === 'and' || sign === 'or' || sign === '%';
    const shown = sign === '%' ? 'rest after' : (SIGN[sign] ?? sign);
    const mark = this.#isMarked(term.signSpan) ? 'clash' : '';
    return this.#bracketed(
      own < binds,
      html`${this.term(left, own)}<wbr /><span class="${word ? 'w' : 'op'} ${mark}">${shown}</span>${this.term(right, tighterRight)}`,
    );
  }

  /** A fraction has no sign to mark: the lower side carries the mark. */
  #marked(term: Extract<Term, { type: 'binary' }>, lower: unknown): unknown {
    return this.#isMarked(term.signSpan) ? html`<span class="clash">${lower}</span>` : lower;
  }

  /** Short and flat enough to stand above or below a fraction bar. */
  #fits(term: Term): boolean {
    if (term.span.to - term.span.from > MOST_IN_FRACTION) return false;
    return !hasTall(term);
  }

  #cases(term: Extract<Term, { type: 'choose' }>, binds: number): unknown {
    const rows: unknown[] = [];
    let rest: Term = term;
    while (rest.type === 'choose') {
      rows.push(
        html`<span>${this.term(rest.yes, 0)}</span><span><span class="w">if</span>${this.term(rest.condition, 0)}</span>`,
      );
      rest = rest.no;
    }
    rows.push(html`<span>${this.term(rest, 0)}</span><span><span class="w">otherwise</span></span>`);
    return this.#bracketed(CHOICE < binds && binds > BINDS['=='], html`<span class="cases">${rows}</span>`);
  }

  #call(term: Extract<Term, { type: 'call' }>): unknown {
    const [first, ...rest] = term.parts;
    if (first !== undefined) {
      if (term.name === 'sum' || term.name === 'product') return this.#wholeColumn(term.name, first);
      if (term.name === 'total' && rest.length > 0)
        return this.#over('sum', first, this.#keys(rest), onlyTable(first));
      if (term.name === 'running')
        return html`<span class="w">running</span>${this.#over('sum', first, rest.length > 0 ? this.#plain(rest[0]) : '')}`;
      if (term.name === 'pick' && rest.length > 0)
        return html`${this.term(first, UNARY)}<wbr /><span class="w">where</span>${this.#pairs(rest)}`;
      if (term.name === 'sqrt') return html`<span class="root">√<span>${this.term(first, 0)}</span></span>`;
      if (term.name === 'abs') return html`|${this.term(first, 0)}|`;
      if (term.name === 'exp') return html`<i>e</i><sup>${this.term(first, 0)}</sup>`;
    }
    const parts = term.parts.map((part, at) => html`${at > 0 ? ', ' : ''}${this.term(part, 0)}`);
    const mark = this.#isMarked(term.nameSpan) ? 'clash' : '';
    return html`<span class="fn ${mark}">${term.name.replaceAll('_', ' ')}</span>(<wbr />${parts})`;
  }

  /** A sum or product down a whole column; where rows are left out by a condition, it stands below the sign. */
  #wholeColumn(what: 'sum' | 'product', of: Term): TemplateResult {
    const table = onlyTable(of);
    const chosen = of.type === 'choose' && isFigure(of.no, what === 'sum' ? 0 : 1) && !this.#options.mark;
    const below = [tablesIn(of).join(', '), chosen ? `where ${this.#plain(of.condition, table)}` : ''];
    return this.#over(what, chosen ? of.yes : of, below.filter(Boolean).join(' '), table);
  }

  /** A big sign with what it runs over below it; columns of that table need not name it again. */
  #over(what: 'sum' | 'product', of: Term, below: string, table: string | null = null): TemplateResult {
    const outer = this.#table;
    this.#table = table ?? outer;
    const inside = this.term(of, BINDS['*']);
    this.#table = outer;
    return html`<span class="big"><span>${what === 'sum' ? 'Σ' : 'Π'}</span>${below ? html`<em>${below}</em>` : nothing}</span>${inside}`;
  }

  /** A term in plain words, for below a big sign. */
  #plain(term: Term | undefined, table: string | null = null): string {
    if (!term) return '';
    const text = this.#text.slice(term.span.from, term.span.to);
    return (table === null ? text : text.replaceAll(`${table}.`, ''))
      .replaceAll('_', ' ')
      .replaceAll('==', '=')
      .replaceAll('>=', '≥')
      .replaceAll('<=', '≤');
  }

  #keys(parts: readonly Term[]): string {
    const keys: string[] = [];
    for (let at = 0; at + 1 < parts.length; at += 2)
      keys.push(`${this.#plain(parts[at])} = ${this.#plain(parts[at + 1])}`);
    return keys.join(', ');
  }

  #pairs(parts: readonly Term[]): unknown {
    const pairs: unknown[] = [];
    for (let at = 0; at + 1 < parts.length; at += 2) {
      const [keys, key] = [parts[at], parts[at + 1]];
      if (keys && key)
        pairs.push(
          html`${at > 0 ? html`<wbr /><span class="w">and</span>` : nothing}${this.term(keys, 4)}<wbr /><span class="op">=</span>${this.term(key, 4)}`,
        );
    }
    return pairs;
  }
}
