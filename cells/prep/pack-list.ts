import type { ChosenCall, PrepReader } from './chosen-calls.ts';
import { handlingOf } from './handling.ts';

/** One spare in the pack; mass and volume in the units that the notebook shows. */
export interface PackLine {
  readonly part: string;
  readonly pieces: number;
  /** The old one, taken off and kept as the spare. */
  readonly old: boolean;
  readonly carrier: string;
  /** How many bikes share it. */
  readonly bikes: number;
  readonly mass: number;
  readonly volume: number;
}

export interface Bag {
  /** '' for spares that no bag is named for. */
  readonly bag: string;
  readonly lines: readonly PackLine[];
  readonly mass: number;
  readonly volume: number;
}

/** What goes along, bag by bag in alphabetical order, those without one last. */
export function packListOf(calls: readonly ChosenCall[], reader: PrepReader): readonly Bag[] {
  const handling = handlingOf(reader);
  const bags = new Map<string, PackLine[]>();
  for (const call of calls) {
    const pieces = reader.number('packed', call.row);
    if (!(pieces > 0)) continue;
    const how = handling.get(call.part);
    const bag = how?.bag ?? '';
    const lines = bags.get(bag) ?? [];
    if (lines.length === 0) bags.set(bag, lines);
    const bikes = reader.number('bikes', call.row);
    lines.push({
      part: call.part,
      pieces,
      old: call.kind === 'keep',
      carrier: how?.carrier ?? '',
      bikes: bikes >= 2 ? bikes : 1,
      mass: reader.number('mass', call.row),
      volume: reader.number('volume', call.row),
    });
  }
  const total = (lines: readonly PackLine[], of: 'mass' | 'volume'): number =>
    lines.reduce((sum, line) => sum + line[of], 0);
  return [...bags]
    .sort(([a], [b]) => (a === '' ? 1 : b === '' ? -1 : a.localeCompare(b)))
    .map(([bag, lines]) => ({
      bag,
      lines,
      mass: total(lines, 'mass'),
      volume: total(lines, 'volume'),
    }));
}
