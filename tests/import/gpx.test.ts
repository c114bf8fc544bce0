import { describe, expect, test } from 'vitest';
import { geodesicDistance } from '../../src/import/gpx/geodesic-distance.ts';
import { gpxLegs } from '../../src/import/gpx/gpx-legs.ts';
import { type Gpx, readGpx } from '../../src/import/gpx/read-gpx.ts';

function gpx(inside: string): Gpx {
  const read = readGpx(
    `<?xml version="1.0"?>\n<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">${inside}</gpx>`,
  );
  if ('refusal' in read) throw new Error(read.refusal);
  return read;
}

const point = (latitude: number, longitude: number): string =>
  `<trkpt lat="${latitude}" lon="${longitude}"><ele>5</ele></trkpt>`;
/** A track eastwards along the equator, a point every tenth of a degree. */
const equator = (from: number, to: number): string =>
  Array.from({ length: Math.round((to - from) * 10) + 1 }, (_, at) => point(0, from + at / 10)).join('');
const waypoint = (latitude: number, longitude: number, name: string): string =>
  `<wpt lat="${latitude}" lon="${longitude}"><name>${name}</name></wpt>`;

/** One degree of the equator, km: pi/180 times the equatorial radius of WGS84, 6378.137 km (NIMA TR8350.2). */
const DEGREE_KM = (Math.PI / 180) * 6378.137;

test('a distance on the ellipsoid', () => {
  // Wellington to Salamanca, 19959679.267 m: the example of GeographicLib's documentation (GeodSolve, Inverse).
  const metres = geodesicDistance(
    { latitude: -41.32, longitude: 174.81 },
    { latitude: 40.96, longitude: -5.5 },
  );
  expect(metres).toBeCloseTo(19959679.267, 3);
  expect(geodesicDistance({ latitude: 1, longitude: 1 }, { latitude: 1, longitude: 1 })).toBe(0);
});

describe('legs of a track', () => {
  test('are cut at the named waypoints, and add up to its length', () => {
    const read = gpx(
      `${waypoint(0.001, 0, 'Port Ansel')}${waypoint(0.002, 1.05, 'Ash Siding')}${waypoint(0, 3, 'Bitter Wells')}
       <trk><name>Loop</name><trkseg>${equator(0, 3)}</trkseg></trk>`,
    );
    const { legs, refused } = gpxLegs(read, read.ways[0]!);
    expect(legs.map(({ name }) => name)).toEqual(['Port Ansel to Ash Siding', 'Ash Siding to Bitter Wells']);
    expect(legs[0]!.distanceKm).toBeCloseTo(1.05 * DEGREE_KM, 6);
    expect(legs[1]!.distanceKm).toBeCloseTo(1.95 * DEGREE_KM, 6);
    expect(refused).toEqual([]);
  });

  test('a waypoint far from the track is refused with a sentence', () => {
    const read = gpx(
      `${waypoint(0.5, 1, 'Far Mine')}${waypoint(0, 1, 'Near')}<trk><trkseg>${equator(0, 2)}</trkseg></trk>`,
    );
    const { legs, refused } = gpxLegs(read, read.ways[0]!);
    expect(legs.map(({ name }) => name)).toEqual(['Start of Track to Near', 'Near to End of Track']);
    // Half a degree of latitude at the equator: 55.3 km on WGS84 (110.574 km a degree, NIMA TR8350.2), near enough.
    expect(refused[0]!.sentence).toMatch(
      /^The waypoint Far Mine stands 55\.\d km from the track, more than 1\.0 km; it cuts no leg\./,
    );
    expect(gpxLegs(read, read.ways[0]!, { reachMetres: 60_000 }).refused).toEqual([]);
  });

  test('a place that is passed twice cuts twice', () => {
    const there = equator(0, 2);
    const back = Array.from({ length: 20 }, (_, at) => point(0, 1.9 - at / 10)).join('');
    const read = gpx(`${waypoint(0, 1, 'Ford')}<trk><trkseg>${there}${back}</trkseg></trk>`);
    const { legs } = gpxLegs(read, read.ways[0]!);
    expect(legs.map(({ distanceKm }) => Math.round(distanceKm / DEGREE_KM))).toEqual([1, 2, 1]);
    expect(legs[1]!.name).toBe('Ford to Ford');
  });

  test('a gap between two stretches is counted as a straight line and said', () => {
    const read = gpx(`<trk><trkseg>${equator(0, 1)}</trkseg><trkseg>${equator(2, 3)}</trkseg></trk>`);
    const { legs, remarks } = gpxLegs(read, read.ways[0]!);
    expect(legs[0]!.distanceKm).toBeCloseTo(3 * DEGREE_KM, 6);
    expect(remarks).toEqual([
      'Between the stretches 1 and 2 of the track is a gap of 111.3 km; it is counted as a straight line.',
    ]);
  });

  test('over the date line', () => {
    const read = gpx(
      `${waypoint(0, 180, 'Line')}<trk><trkseg>${point(0, 179.5)}${point(0, -179.5)}</trkseg></trk>`,
    );
    expect(gpxLegs(read, read.ways[0]!).legs.map(({ distanceKm }) => distanceKm / DEGREE_KM)).toEqual([
      expect.closeTo(0.5, 9),
      expect.closeTo(0.5, 9),
    ]);
  });

  test('one point has no length', () => {
    const read = gpx(`<trk><trkseg>${point(0, 0)}</trkseg></trk>`);
    expect(gpxLegs(read, read.ways[0]!).remarks).toEqual([
      'The way has fewer than two different points, so it has no length.',
    ]);
  });
});

test('a route is cut at its named points', () => {
  const stop = (longitude: number, name: string): string =>
    `<rtept lat="0" lon="${longitude}">${name === '' ? '' : `<name>${name}</name>`}</rtept>`;
  const read = gpx(
    `<rte><name>Plan</name>${stop(0, 'Ansel')}${stop(1, '')}${stop(2, 'Wells &amp; Co')}${stop(3, 'Kiln')}</rte>`,
  );
  const { legs } = gpxLegs(read, read.ways[0]!);
  expect(legs.map(({ startPlace, endPlace }) => `${startPlace}/${endPlace}`)).toEqual([
    'Ansel/Wells & Co',
    'Wells & Co/Kiln',
  ]);
  expect(legs[0]!.distanceKm).toBeCloseTo(2 * DEGREE_KM, 6);
});

describe('a file that is not sound', () => {
  test.each([
    ['no XML', 'part,price\n', 'Line 2 is not sound XML'],
    ['XML that is cut off', '<gpx><trk>\n<trkseg>', 'is not sound XML'],
    ['another kind of XML', '<kml></kml>', 'begins with <kml>'],
    ['nothing in it', '<gpx></gpx>', 'no track, no route and no waypoint'],
    ['a document type', '<!DOCTYPE gpx [<!ENTITY a "aaaa">]><gpx>&a;</gpx>', 'document type (DOCTYPE)'],
    ['an entity of its own', '<gpx><wpt lat="0" lon="0"><name>&boom;</name></wpt></gpx>', 'is not sound XML'],
  ])('%s', (_, text, words) => {
    expect(readGpx(text)).toEqual({ refusal: expect.stringContaining(words) });
  });

  test('points without a sound place are counted', () => {
    const read = gpx(
      `<trk><trkseg>${point(0, 0)}${point(91, 0)}<trkpt lat="x"/>${point(0, 1)}</trkseg></trk>`,
    );
    expect(read.ways[0]!.segments[0]!.length).toBe(2);
    expect(read.remarks).toEqual(['2 points have no sound latitude and longitude and are left out.']);
  });
});
