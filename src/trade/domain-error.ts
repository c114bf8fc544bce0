/** Five significant digits are enough to find the figure again; 0.1 + 0.2 is shown as 0.3. */
const shown = (value: number): string =>
  Number.isFinite(value) ? String(Number(value.toPrecision(6))) : String(value);

/**
 * A figure outside the domain of a formula: a shape of 0, a negative reach. `parameter` is its name in the
 * formula language (`reading_error`), the message a plain sentence, `mend` what to write instead.
 *
 * Example: new DomainError('shape', 0, 'it must be above 0', '...').message is
 * "shape is 0, it must be above 0".
 */
export class DomainError extends Error {
  readonly parameter: string;
  readonly value: number;
  readonly mend: string;
  constructor(parameter: string, value: number, rule: string, mend: string) {
    super(`${parameter.replaceAll('_', ' ')} is ${shown(value)}, ${rule}`);
    this.name = 'DomainError';
    this.parameter = parameter;
    this.value = value;
    this.mend = mend;
  }
}
