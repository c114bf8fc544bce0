import { showNumber } from '../../formula/show.ts';
import { geodesicDistance } from './geodesic-distance.ts';
import type { Gpx, Place, Way } from './read-gpx.ts';
import { type Pass, passesOf } from './track-passes.ts';

/** A leg of a journey, cut from a track or route. */
export interface GpxLeg {
  readonly name: string;
  readonly startPlace: string;
  readonly endPlace: string;
  readonly distanceKm: number;
}

export interface GpxLegs {
  readonly legs: readonly GpxLeg[];
  /** Waypoints that were not used, each with its sentence. */
  readonly refused: readonly { readonly waypoint: string; readonly sentence: string }[];
  /** Sentences on gaps and the like. */
  readonly remarks: readonly string[];
}

export interface GpxLegOptions {
  /** Farthest that a waypoint may stand from the track to cut it, metres; 1000 if absent. */
  readonly reachMetres?: number;
}

/** A gap between two recorded stretches that is worth a remark, metres. */
const GAP_METRES = 200;
/** Legs shorter than this are a waypoint beside the start or the end, metres. */
const SHORTEST_LEG_METRES = 50;

/** A place along the way at which a leg ends. */
interface Cut {
  readonly alongMetres: number;
  readonly name: string;
}

/**
 * The legs of a way: its length on the WGS84 ellipsoid, cut where it passes the file's named waypoints, or at
 * the named points of a route. A waypoint far from the track is refused with a sentence.
 *
 * @returns the legs in order; the sum of their distances is the way's length
 * @example gpxLegs(gpx, gpx.ways[0]!).legs[0]
 * // { name: 'Port Ansel to Ash Siding', startPlace: 'Port Ansel', endPlace: 'Ash Siding', distanceKm: 260.4 }
 */
export function gpxLegs(gpx: Gpx, way: Way, options: GpxLegOptions = {}): GpxLegs {
  const points = way.segments.flat();
  const remarks: string[] = [];
  const along = measureAlong(way, remarks);
  const lengthMetres = along[along.length - 1] ?? 0;
  if (points.length < 2 || lengthMetres === 0) {
    return {
      legs: [],
      refused: [],
      remarks: ['The way has fewer than two different points, so it has no length.'],
    };
  }
  const refused: { waypoint: string; sentence: string }[] = [];
  const cuts = [
    ...namedPoints(points, along),
    ...waypointCuts(gpx, points, along, options.reachMetres ?? 1000, refused),
  ].sort((a, b) => a.alongMetres - b.alongMetres);
  return { legs: legsBetween(way, points, cuts, lengthMetres), refused, remarks };
}

/** Metres along the way at each point; gaps between stretches count as straight lines, with a remark. */
function measureAlong(way: Way, remarks: string[]): Float64Array {
  const along = new Float64Array(way.segments.reduce((sum, segment) => sum + segment.length, 0));
  let before: Place | null = null;
  let metres = 0;
  let at = 0;
  way.segments.forEach((segment, order) => {
    segment.forEach((place, inSegment) => {
      if (before !== null) {
        const step = geodesicDistance(before, place);
        metres += step;
        if (inSegment === 0 && step > GAP_METRES) {
          remarks.push(
            `Between the stretches ${order} and ${order + 1} of the track is a gap of ${showNumber(step / 1000, 1)} km; it is counted as a straight line.`,
          );
        }
      }
      along[at] = metres;
      at += 1;
      before = place;
    });
  });
  return along;
}

/** Named points of the way itself: a route's stops. */
function namedPoints(points: readonly Place[], along: Float64Array): Cut[] {
  return points.flatMap((point, at) =>
    point.name === null ? [] : [{ alongMetres: along[at]!, name: point.name }],
  );
}

function waypointCuts(
  gpx: Gpx,
  points: readonly Place[],
  along: Float64Array,
  reachMetres: number,
  refused: { waypoint: string; sentence: string }[],
): Cut[] {
  return gpx.waypoints.flatMap((waypoint, order) => {
    const name = waypoint.name ?? '';
    if (name === '') {
      refused.push({
        waypoint: `Waypoint ${order + 1}`,
        sentence: `Waypoint ${order + 1} has no name, so it cuts no leg.`,
      });
      return [];
    }
    const { passes, nearestMetres } = passesOf(waypoint, points, along, reachMetres);
    if (passes.length === 0) {
      refused.push({ waypoint: name, sentence: farWords(name, nearestMetres, reachMetres) });
      return [];
    }
    return passes.map((pass: Pass) => ({ alongMetres: pass.alongMetres, name }));
  });
}

function farWords(name: string, nearestMetres: number, reachMetres: number): string {
  return `The waypoint ${name} stands ${showNumber(nearestMetres / 1000, 1)} km from the track, more than ${showNumber(reachMetres / 1000, 1)} km; it cuts no leg. Move it onto the track, or allow a longer way.`;
}

function legsBetween(
  way: Way,
  points: readonly Place[],
  cuts: readonly Cut[],
  lengthMetres: number,
): readonly GpxLeg[] {
  const legs: GpxLeg[] = [];
  const wayName = way.name ?? (way.kind === 'track' ? 'Track' : 'Route');
  let from: Cut = { alongMetres: 0, name: points[0]!.name ?? `Start of ${wayName}` };
  const last: Cut = {
    alongMetres: lengthMetres,
    name: points[points.length - 1]!.name ?? `End of ${wayName}`,
  };
  for (const cut of cuts) {
    const isAtStart = cut.alongMetres < SHORTEST_LEG_METRES;
    if (isAtStart && legs.length === 0) {
      from = { alongMetres: 0, name: cut.name };
      continue;
    }
    if (lengthMetres - cut.alongMetres < SHORTEST_LEG_METRES) {
      return [...legs, legOf(from, { alongMetres: lengthMetres, name: cut.name })];
    }
    if (cut.alongMetres - from.alongMetres < SHORTEST_LEG_METRES) continue;
    legs.push(legOf(from, cut));
    from = cut;
  }
  return [...legs, legOf(from, last)];
}

function legOf(from: Cut, to: Cut): GpxLeg {
  return {
    name: `${from.name} to ${to.name}`,
    startPlace: from.name,
    endPlace: to.name,
    distanceKm: (to.alongMetres - from.alongMetres) / 1000,
  };
}
