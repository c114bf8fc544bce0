import type { ColumnType, Kind } from '../../formula/column.ts';
import type { Unit } from '../../formula/unit.ts';

const held = new Map<string, ColumnType>();

/** One object a type, so that types are compared by identity when the graph asks what changed. */
export function internType(kind: Kind, unit: Unit | null, options?: readonly string[]): ColumnType {
  const key = JSON.stringify([
    kind,
    unit === null ? null : [unit.text, unit.factor, unit.dimensions, unit.currencies],
    options ?? null,
  ]);
  let type = held.get(key);
  if (type === undefined) {
    if (held.size > 5000) held.clear();
    type = { kind, unit, options };
    held.set(key, type);
  }
  return type;
}
