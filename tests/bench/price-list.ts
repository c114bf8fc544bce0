const NOUNS = ['Chain', 'Sprocket', 'Bearing', 'Brake pad', 'Fork seal', 'Tyre', 'Tube', 'Lever', 'Cable'];
const SIDES = ['rear', 'front', 'left', 'right', 'upper', 'lower', 'inner', 'outer'];
const MAKES = ['heavy duty', 'sealed', 'sintered', 'ribbed', 'forged', 'plated', 'with clip, boxed'];

/** An invented list of 100,000 rows and 8 columns, about 10 MB, with quotes in about one row of four. */
export function makeList(rows: number): string {
  const lines = ['Art. no.;Description;Price;Currency;Per pack;Rebate (%);Lead time (days);Fits'];
  for (let row = 0; row < rows; row += 1) {
    const noun = NOUNS[row % NOUNS.length]!;
    const words = `${noun} ${SIDES[row % 8]} ${10 + (row % 90)} x ${17 + (row % 5)}, ${MAKES[row % 7]}, lot ${row % 997}`;
    const text = row % 4 === 0 ? `"${words} 3/8"" drive; new"` : words;
    const price = row % 500 === 0 ? 'POA' : `${1 + (row % 900)},${String(row % 100).padStart(2, '0')}`;
    lines.push(
      `LS-${100000 + row}-${row % 10};${text};${price};EUR;${1 + (row % 10)};${row % 25};${2 + (row % 20)};Wayfarer ${400 + (row % 6) * 50} ${2001 + (row % 24)}`,
    );
  }
  return `${lines.join('\n')}\n`;
}
