import type { PrepReader } from './chosen-calls.ts';

/** What to leave a place with. */
export interface Refill {
  readonly place: string;
  readonly shownAt: string;
  /** Litres of fuel and water needed at its departure, as shown; '' where nothing is filled up. */
  readonly fuel: string;
  readonly water: string;
  /** What is wrong with the stretch that begins there, '' for nothing. */
  readonly says: string;
}

export interface Refills {
  readonly stops: readonly Refill[];
  readonly distanceUnit: string;
  readonly fuelUnit: string;
  readonly waterUnit: string;
  /** Oil to carry for the whole trip, as shown with its unit; '' when it is not told. */
  readonly oil: string;
}

/** Places where fuel or water is filled up, in riding order. */
export function refillsOf(reader: PrepReader): Refills {
  const stops: Refill[] = [];
  for (let row = 0; row < reader.rows('stop_place'); row++) {
    const fuel = amount(reader, 'stop_fuel', row);
    const water = amount(reader, 'stop_water', row);
    const says = reader.text('stop_says', row);
    if (fuel === '' && water === '' && says === '') continue;
    const shownAt = reader.words('stop_km', row, 0);
    stops.push({ place: reader.text('stop_place', row), shownAt, fuel, water, says });
  }
  const oil = Number.isNaN(reader.number('oil')) ? '' : `${reader.words('oil', 0, 2)} ${reader.unit('oil')}`;
  return {
    stops,
    oil: oil.trim(),
    distanceUnit: reader.unit('stop_km'),
    fuelUnit: reader.unit('stop_fuel'),
    waterUnit: reader.unit('stop_water'),
  };
}

function amount(reader: PrepReader, role: 'stop_fuel' | 'stop_water', row: number): string {
  return Number.isNaN(reader.number(role, row)) ? '' : reader.words(role, row, 1);
}
