import geodesic from 'geographiclib-geodesic';

interface OnEarth {
  readonly latitude: number;
  readonly longitude: number;
}

/**
 * The shortest way between two places on the WGS84 ellipsoid, metres (Karney 2013, "Algorithms for geodesics",
 * by GeographicLib). Places in degrees.
 *
 * @example geodesicDistance({ latitude: 0, longitude: 0 }, { latitude: 0, longitude: 1 }) // 111319.4907932...
 */
export function geodesicDistance(from: OnEarth, to: OnEarth): number {
  if (from.latitude === to.latitude && from.longitude === to.longitude) return 0;
  const { Geodesic } = geodesic;
  return (
    Geodesic.WGS84.Inverse(from.latitude, from.longitude, to.latitude, to.longitude, Geodesic.DISTANCE).s12 ??
    0
  );
}
