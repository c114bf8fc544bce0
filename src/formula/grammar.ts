import type { BinarySign } from './term.ts';

/** Signs of the language, by the sign mathjs reads. */
export const SIGNS: Readonly<Record<string, BinarySign>> = {
  '+': '+',
  '-': '-',
  '*': '*',
  '/': '/',
  '^': '^',
  '%': '%',
  mod: '%',
  '==': '==',
  '!=': '!=',
  '<': '<',
  '<=': '<=',
  '>': '>',
  '>=': '>=',
  and: 'and',
  or: 'or',
};

/** Comparisons in a chain such as a < b < c, by mathjs's name. */
export const CHAINED: Readonly<Record<string, BinarySign>> = {
  smaller: '<',
  smallerEq: '<=',
  larger: '>',
  largerEq: '>=',
  equal: '==',
  unequal: '!=',
};

/** Nodes that mathjs reads and this language refuses: sentence and mend. */
export const REFUSED: Readonly<Record<string, readonly [string, string]>> = {
  AssignmentNode: ['A formula does not assign', 'Give the formula its name on its card.'],
  FunctionAssignmentNode: [
    'Functions cannot be defined in a formula',
    'Use the functions of the reference, or another formula cell.',
  ],
  ArrayNode: ['Lists are not part of this language', 'Read a column as table.column.'],
  BlockNode: ['One formula holds one expression', 'Give each its own formula.'],
  IndexNode: ['Places in lists are not part of this language', 'Use pick().'],
  ObjectNode: ['Objects are not part of this language', 'Use a table.'],
  RangeNode: ['Ranges are not part of this language', 'Read a column as table.column.'],
};
