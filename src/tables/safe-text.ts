/** Harmless, signs and all: it stays a number in every program. */
const PLAIN_NUMBER = /^[+-]?\d+(?:[.,]\d+)?$/;

/**
 * Sheets run a text field that begins with one of these signs as a formula, tabs, breaks and spaces before it
 * or not. (OWASP, "CSV Injection": = + - @, tab, carriage return; their full-width forms as well.)
 */
const RUNNABLE = /^['\s]*[=+\-@＝＋－＠]|^'*[\t\r\n]/;

/**
 * Text as it may stand in a file that other programs open: an apostrophe goes before what a sheet would run.
 * `bareText` takes it off again, so that every text comes back as it was.
 *
 * @example safeText('=1+1') // "'=1+1"
 * @example safeText('-5') // '-5'
 */
export function safeText(text: string): string {
  return RUNNABLE.test(text) && !PLAIN_NUMBER.test(text) ? `'${text}` : text;
}

/**
 * Text of a file without the apostrophe that `safeText` (or a sheet) put before it.
 *
 * @example bareText("'=1+1") // '=1+1'
 * @example bareText("'90s tank badge") // "'90s tank badge"
 */
export function bareText(text: string): string {
  return text.charCodeAt(0) === 39 && RUNNABLE.test(text.slice(1)) ? text.slice(1) : text;
}
