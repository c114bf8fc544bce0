import { type GpxLegs, gpxLegs } from '../../import/gpx/gpx-legs.ts';
import { readGpx } from '../../import/gpx/read-gpx.ts';
import { writeRecords } from '../../tables/write-csv.ts';

/** The legs of a GPX file as a table of text, which is brought in like any other. */
export interface GpxTable {
  readonly csv: string;
  /** Sentences on gaps, waypoints off the track, points left out. */
  readonly remarks: readonly string[];
  /** Names of the tracks and routes in the file, in order. */
  readonly ways: readonly string[];
}

/**
 * Reads one way of a GPX file, cut into legs at its named places.
 *
 * @param way place of the track or route in the file, from 0
 * @returns the table, or a sentence on what is wrong
 */
export function gpxTable(text: string, way: number): GpxTable | { readonly refusal: string } {
  const gpx = readGpx(text);
  if ('refusal' in gpx) return gpx;
  const chosen = gpx.ways[way];
  if (chosen === undefined) {
    return { refusal: 'The file has waypoints but no track and no route, so it gives no distances.' };
  }
  const { legs, refused, remarks }: GpxLegs = gpxLegs(gpx, chosen);
  if (legs.length === 0) return { refusal: remarks[0] ?? 'The way has no length.' };
  const rows = legs.map(({ name, startPlace, endPlace, distanceKm }) => [
    name,
    startPlace,
    endPlace,
    distanceKm.toFixed(1),
  ]);
  return {
    csv: writeRecords([['leg', 'start place', 'end place', 'distance (km)'], ...rows]),
    remarks: [...gpx.remarks, ...remarks, ...refused.map(({ sentence }) => sentence)],
    ways: gpx.ways.map(({ kind, name }, at) => name ?? `${kind} ${at + 1}`),
  };
}
