import type { Term } from './term.ts';
import { raiseUnit } from './unit.ts';
import { lookUpUnit } from './unit-text.ts';

/** A number, signed or not, or a product that ends in a unit, so that a (further) unit may follow: `12 N m`. */
export function isQuantity(term: Term): boolean {
  if (term.type === 'unary') return term.sign === '-' && isQuantity(term.term);
  return (
    term.type === 'number' || (term.type === 'binary' && term.sign === '*' && term.right.type === 'unit')
  );
}

/** Turns a name or a power of a name into a unit term. */
export function unitTerm(term: Term): Term | null {
  if (term.type === 'name') {
    const unit = lookUpUnit(term.name);
    return unit === null ? null : { type: 'unit', unit, span: term.span };
  }
  if (
    term.type === 'binary' &&
    term.sign === '^' &&
    term.left.type === 'name' &&
    term.right.type === 'number'
  ) {
    const unit = lookUpUnit(term.left.name);
    return unit === null ? null : { type: 'unit', unit: raiseUnit(unit, term.right.value), span: term.span };
  }
  return null;
}

/** A figure that ends in its unit, so that a slash and another unit may follow: `500 km`, `500 km/day`. */
export function endsInUnit(term: Term): boolean {
  if (term.type === 'unary') return term.sign === '-' && endsInUnit(term.term);
  if (term.type !== 'binary') return false;
  if (term.sign === '*') return term.right.type === 'unit';
  const below = term.right.type === 'binary' && term.right.sign === '^' ? term.right.left : term.right;
  return term.sign === '/' && below.type === 'name' && below.perUnit === true;
}

/** The term under a slash, its name read as a unit's where it is one: `day`, `cm^2`. */
export function belowUnit(term: Term): Term {
  if (term.type === 'name') return lookUpUnit(term.name) === null ? term : { ...term, perUnit: true };
  if (term.type !== 'binary' || term.sign !== '^' || term.right.type !== 'number') return term;
  return { ...term, left: belowUnit(term.left) };
}
