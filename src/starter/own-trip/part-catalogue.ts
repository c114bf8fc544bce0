import type { Entry } from '../../notebook/document.ts';
import { readTripFile, type TripFile, textsOf } from '../trip-file.ts';

/** How a part of the reference data is judged, and so which figure of the rider's own it asks for. */
export type JudgedBy =
  /** A gauge that moves from new to a limit: the reading now. */
  | 'reading'
  /** Distance since it was last done, up to the interval: that distance. */
  | 'service'
  /** Months since it was made or changed: those months. */
  | 'calendar'
  /** A life with a low and a high figure: the age. */
  | 'life'
  /** A sudden failure with age: the age. */
  | 'sudden'
  /** A sudden failure by chance alone: nothing. */
  | 'chance';

/** One part that a rider may tick. */
export interface CataloguePart {
  /** As the reference data calls it, with a capital: its name in the notebook. */
  readonly name: string;
  /** Where on the bike: Wheels, Drive, Brakes, ... */
  readonly group: string;
  readonly judgedBy: JudgedBy;
  /** What the gauge is laid on, in words. */
  readonly gauge: string;
  /** Unit of the reading; '' where it is not measured. */
  readonly unit: string;
  readonly newReading: number | null;
  readonly limit: number | null;
  readonly critical: boolean;
  /** The part of the worked example that is fitted in the same way; '' for none. */
  readonly handledLike: string;
  /** Which of its figures come from where. */
  readonly basis: string;
  /** What it puts into the columns of the table of parts, by column name. */
  readonly entries: Readonly<Record<string, Entry>>;
}

/** Texts of datasets/reference: `wear-reference.csv` and `start-parts.csv`. */
export interface CatalogueFiles {
  readonly reference: string;
  readonly start: string;
}

/** Months that 1,000 km on the road take: 6 to 9 days. Common practice, no source; as in the worked example. */
const MONTHS_PER_1000_KM = { low: 0.2, high: 0.3 } as const;
/** How far apart km on the bike's counter and sealed km lie. Common practice, no source; as in the worked example. */
const KM_PER_1000_KM = { low: 900, high: 1100 } as const;
/** By the track a job takes a third more than in the shed where the reference gives no time. No source. */
const ROAD_HOURS_SHARE = 4 / 3;

/**
 * The parts that wear, as the reference data knows them, in the order in which a bike is gone over.
 *
 * Throws Error naming the file and the part when the two files do not speak of the same parts.
 *
 * @example readCatalogue(files).find((part) => part.name === 'Front brake pads')?.limit // 1
 */
export function readCatalogue(files: CatalogueFiles): readonly CataloguePart[] {
  const reference = readTripFile({ 'wear-reference.csv': files.reference }, 'wear-reference.csv');
  const start = readTripFile({ 'start-parts.csv': files.start }, 'start-parts.csv');
  const known = textsOf(reference, 'part');
  return textsOf(start, 'part').map((part, at) => {
    const row = known.indexOf(part);
    if (row === -1) throw new Error(`start-parts.csv names ${part}, which wear-reference.csv does not have.`);
    return cataloguePart(fields(reference, row), fields(start, at));
  });
}

type Fields = (name: string) => string;

function fields(file: TripFile, row: number): Fields {
  return (name) => textsOf(file, name)[row] ?? '';
}

const figure = (text: string): number | null => (text === '' ? null : Number(text));

function cataloguePart(reference: Fields, start: Fields): CataloguePart {
  const part = reference('part');
  const judgedBy = judgedByOf(part, start('judged_by'), figure(reference('weibull_shape')));
  const measured = judgedBy === 'reading' || judgedBy === 'service' || judgedBy === 'calendar';
  const name = part.charAt(0).toUpperCase() + part.slice(1);
  const [newReading, limit] = measured
    ? [figure(reference('new_value')), figure(reference('limit_value'))]
    : [null, null];
  const unit = measured ? reference('unit') : '';
  const critical = reference('critical') === 'yes';
  return {
    name,
    group: start('group'),
    judgedBy,
    gauge: judgedBy === 'chance' ? 'chance' : reference('measure'),
    unit,
    newReading,
    limit,
    critical,
    handledLike: start('handled_like'),
    basis: reference('basis'),
    entries: {
      part: name,
      measured_by: judgedBy === 'chance' ? 'chance' : reference('measure'),
      gauge_unit: unit === '' ? null : unit,
      new_reading: newReading,
      limit,
      critical,
      wear_class: start('wear_class'),
      ...wearFigures(judgedBy, reference),
      ...handling(reference, start),
    },
  };
}

function judgedByOf(part: string, written: string, shape: number | null): JudgedBy {
  // Shape 1 has no memory: its age tells nothing.
  if (written === 'sudden') return shape === 1 ? 'chance' : 'sudden';
  if (written === 'reading' || written === 'service' || written === 'calendar' || written === 'life')
    return written;
  throw new Error(`start-parts.csv: ${part} is judged by '${written}', which is no way to judge a part.`);
}

/** Rates and lives as the table of parts has them; section 2 and 3 of the method. */
function wearFigures(judgedBy: JudgedBy, reference: Fields): Record<string, Entry> {
  const [low, likely, high] = ['life_low_km', 'life_likely_km', 'life_high_km'].map((name) =>
    figure(reference(name)),
  ) as [number | null, number | null, number | null];
  const shape = figure(reference('weibull_shape'));
  switch (judgedBy) {
    case 'calendar':
      return { rate_low: MONTHS_PER_1000_KM.low, rate_high: MONTHS_PER_1000_KM.high };
    case 'service':
      return { rate_low: KM_PER_1000_KM.low, rate_high: KM_PER_1000_KM.high };
    case 'reading': {
      const way = Math.abs(Number(reference('limit_value')) - Number(reference('new_value')));
      return { rate_low: ratePer1000(way, high), rate_high: ratePer1000(way, low) };
    }
    case 'life':
      return { life_low: low, life_high: high };
    case 'sudden':
      return { sudden_life: characteristicLife(likely, shape), shape };
    case 'chance':
      return { sudden_life: characteristicLife(likely, shape), shape, age: 0 };
  }
}

/** The rate, per 1,000 km, at which a whole way from new to the limit takes a life, to four digits. */
function ratePer1000(way: number, lifeKm: number | null): number | null {
  return lifeKm === null ? null : Number(((way * 1000) / lifeKm).toPrecision(4));
}

/**
 * The Weibull characteristic life whose median is this, km, to the nearest 100: median / (ln 2)^(1/shape)
 * (NIST/SEMATECH e-Handbook of Statistical Methods 8.1.6.2).
 */
function characteristicLife(medianKm: number | null, shape: number | null): number | null {
  if (medianKm === null || shape === null) return null;
  return Math.round(medianKm / Math.LN2 ** (1 / shape) / 100) * 100;
}

function handling(reference: Fields, start: Fields): Record<string, Entry> {
  const shedHours = figure(reference('shed_hours'));
  const roadHours = figure(reference('road_hours'));
  const yes = (text: string): boolean => text === 'yes';
  return {
    mass: figure(reference('mass_kg')),
    volume: figure(reference('volume_l')),
    shed_hours: shedHours,
    road_hours:
      roadHours ?? (shedHours === null ? null : Math.round(shedHours * ROAD_HOURS_SHARE * 100) / 100),
    // 'marginal' is not counted on.
    roadside: yes(reference('roadside_possible')),
    wear_shows: yes(start('wear_shows')),
    worn_strands: yes(start('worn_strands')),
    old_usable: yes(start('old_usable')),
    road_lead: figure(start('road_lead')),
    changed_with: start('changed_with') === '' ? null : start('changed_with'),
  };
}
