import { geodesicDistance } from './geodesic-distance.ts';
import type { Place } from './read-gpx.ts';

/** Where a track passes a waypoint. */
export interface Pass {
  readonly alongMetres: number;
  /** Metres between the waypoint and the track there. */
  readonly offMetres: number;
}

const METRES_A_DEGREE = 111_320;

/**
 * Every place at which a track passes a waypoint: one for each time that it comes near and goes away again, so
 * that a place ridden through twice cuts the track twice.
 *
 * @param along metres along the track at each of its points
 * @param reachMetres farthest that counts as passing
 * @returns the passes in the track's order, and how near the track comes at all
 */
export function passesOf(
  waypoint: Place,
  points: readonly Place[],
  along: Float64Array,
  reachMetres: number,
): { readonly passes: readonly Pass[]; readonly nearestMetres: number } {
  const near: Pass[] = [];
  let nearest = Number.POSITIVE_INFINITY;
  for (let at = 1; at < points.length; at += 1) {
    const pass = nearestOnStep(waypoint, points[at - 1]!, points[at]!, along[at - 1]!, along[at]!);
    if (pass.offMetres < nearest) nearest = pass.offMetres;
    if (pass.offMetres <= reachMetres) near.push(pass);
  }
  if (near.length === 0) return { passes: [], nearestMetres: exactly(waypoint, points, nearest) };
  // Beside a nearer pass, a farther one is mostly the same road a bend before or after.
  const reach = Math.min(reachMetres, Math.max(2 * nearest, 100));
  const passes: Pass[] = [];
  for (const pass of near) {
    if (pass.offMetres > reach) continue;
    const last = passes[passes.length - 1];
    if (last === undefined || pass.alongMetres - last.alongMetres > 2 * reachMetres) passes.push(pass);
    else if (pass.offMetres < last.offMetres) passes[passes.length - 1] = pass;
  }
  return { passes, nearestMetres: nearest };
}

/** The plane over a few hundred kilometres is off by more than a sentence should be: measured on the ellipsoid. */
function exactly(waypoint: Place, points: readonly Place[], roughMetres: number): number {
  if (!Number.isFinite(roughMetres) || roughMetres < 20_000) return roughMetres;
  let nearest = Number.POSITIVE_INFINITY;
  const step = Math.max(1, Math.floor(points.length / 5000));
  for (let at = 0; at < points.length; at += step) {
    nearest = Math.min(nearest, geodesicDistance(waypoint, points[at]!));
  }
  return nearest;
}

/** The nearest place of one step of the track, on a plane that touches the earth at the waypoint. */
function nearestOnStep(waypoint: Place, from: Place, to: Place, fromMetres: number, toMetres: number): Pass {
  const metresEast = METRES_A_DEGREE * Math.cos((waypoint.latitude * Math.PI) / 180);
  const fromX = turned(from.longitude - waypoint.longitude) * metresEast;
  const fromY = (from.latitude - waypoint.latitude) * METRES_A_DEGREE;
  const toX = turned(to.longitude - waypoint.longitude) * metresEast;
  const toY = (to.latitude - waypoint.latitude) * METRES_A_DEGREE;
  const [x, y] = [toX - fromX, toY - fromY];
  const square = x * x + y * y;
  const share = square === 0 ? 0 : Math.max(0, Math.min(1, -(fromX * x + fromY * y) / square));
  return {
    alongMetres: fromMetres + share * (toMetres - fromMetres),
    offMetres: Math.hypot(fromX + share * x, fromY + share * y),
  };
}

/** Degrees between -180 and 180: tracks cross the date line. */
function turned(degrees: number): number {
  return ((((degrees + 180) % 360) + 360) % 360) - 180;
}
