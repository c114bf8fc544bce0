import { type FaultKind, FormulaFault } from './fault.ts';
import type { Span } from './term.ts';
import type { Token } from './tokens.ts';

/** Walks along the tokens in step with the tree, so that each node learns where it stands. */
export class TokenCursor {
  at = 0;
  readonly tokens: readonly Token[];

  constructor(tokens: readonly Token[]) {
    this.tokens = tokens;
  }

  fault(kind: FaultKind, message: string, mend: string, span: Span): FormulaFault {
    return new FormulaFault({ kind, message, mend, place: { from: span.from, to: span.to } });
  }

  here(): Span {
    const token = this.tokens[Math.min(this.at, this.tokens.length - 1)] as Token;
    return { from: token.from, to: token.to };
  }

  /** The next token that is `text`, brackets skipped on the way. */
  take(text: string): Span {
    for (let i = this.at; i < this.tokens.length; i++) {
      const token = this.tokens[i] as Token;
      if (token.text === text) {
        this.at = i + 1;
        return { from: token.from, to: token.to };
      }
      if (token.text !== '(' && token.text !== ')' && token.text !== ',' && token.text !== '+') break;
    }
    return this.here();
  }

  takeSort(sort: Token['sort']): Token {
    for (let i = this.at; i < this.tokens.length; i++) {
      const token = this.tokens[i] as Token;
      if (token.sort === sort) {
        this.at = i + 1;
        return token;
      }
    }
    return this.tokens[this.tokens.length - 1] as Token;
  }

  textBetween(from: number, to: number): string {
    return this.tokens
      .filter((token) => token.from >= from && token.to <= to)
      .map((token) => token.text)
      .join(' ')
      .replace(/\( /g, '(')
      .replace(/ \)/g, ')')
      .replace(/ ?([/^*]) ?/g, '$1');
  }
}
