import erfc from '@stdlib/math-base-special-erfc';

const HALF_PI_ROOT = Math.sqrt(Math.PI / 2);
/** From here the asymptotic series reaches full precision before its terms grow again. */
const SERIES_FROM = 12;

/** 1/z (1 - 1/z^2 + 3/z^4 - 15/z^6 ...), summed until a term no longer counts. */
function asymptoticMills(z: number): number {
  const inverseSquare = 1 / (z * z);
  let term = 1;
  let sum = 1;
  for (let odd = 1; Math.abs(term) > 1e-17; odd += 2) {
    term *= -odd * inverseSquare;
    sum += term;
  }
  return sum / z;
}

/**
 * Mills ratio: upper tail of the standard normal over its density at z. It stays an ordinary number where
 * tail and density both vanish, so that differences of far tails keep their digits.
 * @param z plain number above -37; NaN gives NaN.
 * @returns plain number above 0.
 * Source: Abramowitz and Stegun 1964, 26.2.12 (asymptotic series); below z = 12 from erfc.
 * @example millsRatio(2) = 0.42136922928805447
 * (mpmath 1.3.0, 50 digits: sqrt(pi/2) * exp(2) * erfc(sqrt(2)).)
 */
export function millsRatio(z: number): number {
  if (z >= SERIES_FROM) return asymptoticMills(z);
  return HALF_PI_ROOT * Math.exp(0.5 * z * z) * erfc(z * Math.SQRT1_2);
}
