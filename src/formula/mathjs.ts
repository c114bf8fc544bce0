import {
  create,
  type FactoryFunctionMap,
  type MathJsInstance,
  parseDependencies,
  unitDependencies,
} from 'mathjs';

/**
 * Our one mathjs instance: its parser and its table of units, nothing else. It is never asked to evaluate
 * (left open, its evaluator can hang or crash the page), so nothing more is picked in.
 */
const picked = create({ parseDependencies, unitDependencies } as FactoryFunctionMap) as MathJsInstance;

export const mathParse = picked.parse;

interface MathUnitPart {
  readonly unit: { readonly value: number; readonly offset: number; readonly dimensions: readonly number[] };
  readonly prefix: { readonly value: number };
  readonly power: number;
}

/** The parts of a unit name that mathjs knows, or null. */
export function mathUnit(name: string): MathUnitPart | null {
  try {
    const unit = picked.unit(name) as unknown as { units: readonly MathUnitPart[]; value: unknown };
    const part = unit.units[0];
    return unit.units.length === 1 && part !== undefined && part.power === 1 ? part : null;
  } catch {
    return null;
  }
}
