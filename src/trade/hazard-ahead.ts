/** Past this exponent exp() overflows. */
const LARGEST_EXPONENT = 709;
/** From this reach over age on the plain difference loses no digits. */
const AGE_IS_SMALL = 1e8;
/** Beyond this, ln(expm1(y)) and y are the same number. */
const EXPM1_IS_EXP = 40;

/** (age/life)^shape: the hazard a part has lived through. Figures as in `hazardAhead`, which takes it. */
export function hazardSoFar(ageKm: number, lifeKm: number, shape: number): number {
  return (ageKm / lifeKm) ** shape;
}

/**
 * Hazard gathered over a reach by a part of some age with a Weibull life, ((a+X)/eta)^beta - (a/eta)^beta
 * without the cancellation; exp(-hazard) is its survival.
 * @param reachKm sealed-equivalent km ahead, 0 or more.
 * @param ageKm km covered at the start, 0 or more; plays no part where the shape is 1.
 * @param lifeKm characteristic life in km, above 0; infinite for a part that never fails.
 * @param shape Weibull shape, above 0.
 * @param soFar hazardSoFar(ageKm, lifeKm, shape), for callers that keep it over many reaches.
 * @returns plain number, 0 to infinity. Figures are not checked; a missing one gives NaN.
 * Source: model 3; Weibull 1951; NIST/SEMATECH e-Handbook 8.1.6.2.
 * @example hazardAhead(1000, 0, 5000, 1.5, 0) = 0.08944271909999159
 * (By hand: 0.2^1.5 = sqrt(0.008).)
 */
export function hazardAhead(
  reachKm: number,
  ageKm: number,
  lifeKm: number,
  shape: number,
  soFar: number = hazardSoFar(ageKm, lifeKm, shape),
): number {
  if (reachKm === 0) return 0;
  if (shape === 1) return reachKm / lifeKm;
  const growth = reachKm / ageKm;
  if (growth > AGE_IS_SMALL) {
    const byTheEnd = ((ageKm + reachKm) / lifeKm) ** shape;
    return byTheEnd === Infinity ? Infinity : byTheEnd - soFar;
  }
  const y = shape * Math.log1p(growth);
  if (soFar > 1e-290 && soFar < Infinity && y < LARGEST_EXPONENT) return soFar * Math.expm1(y);
  const logHazard =
    shape * (Math.log(ageKm) - Math.log(lifeKm)) + (y > EXPM1_IS_EXP ? y : Math.log(Math.expm1(y)));
  return logHazard > LARGEST_EXPONENT ? Infinity : Math.exp(logHazard);
}
