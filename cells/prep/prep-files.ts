import { safeText } from '../../src/tables/safe-text.ts';
import { writeRecords } from '../../src/tables/write-csv.ts';
import { type PrepList, prepLists } from './prep-lists.ts';
import type { PrepReading } from './prep-reading.ts';
import { CAUTION } from './prep-words.ts';

/**
 * The sheet as one CSV text: each list under its own head line, with the list and the group in front of every
 * row, so that it can be sorted and filtered as one table.
 */
export function prepCsv(prep: PrepReading): string {
  const records: string[][] = [['List', 'Group', 'Done', 'Item', 'What', 'Value']];
  for (const list of prepLists(prep)) {
    for (const group of list.groups) {
      for (const row of group.rows) {
        row.slice(1).forEach((value, at) => {
          if (value !== '')
            records.push([list.title, group.title, '', row[0] ?? '', list.heads[at + 1] ?? '', value]);
        });
      }
    }
  }
  return writeRecords(records.map((record) => record.map(safeText)));
}

/** The sheet as Markdown: a heading and tables for each list, with boxes to tick. */
export function prepMarkdown(prep: PrepReading): string {
  const lines = [`# ${escaped(prep.title)}: ${escaped(prep.notebook)}`, ''];
  for (const list of prepLists(prep)) {
    lines.push(`## ${list.title}`, '');
    for (const group of list.groups) {
      if (group.title !== '') lines.push(`### ${escaped(group.title)}`, '');
      lines.push(...tableOf(list, group.rows), '');
    }
  }
  lines.push(`> ${CAUTION}`, '');
  return lines.join('\n');
}

function tableOf(list: PrepList, rows: readonly (readonly string[])[]): string[] {
  const row = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  const box = list.ticks ? ['[ ]'] : [];
  const heads = list.ticks ? ['Done', ...list.heads] : list.heads;
  return [
    row(heads),
    row(heads.map(() => '---')),
    ...rows.map((cells) => row([...box, ...cells.map(escaped)])),
  ];
}

/** Text that Markdown would read as marks stands for itself. */
function escaped(text: string): string {
  return text.replace(/[\\`*_[\]<>|#]/g, '\\$&').replace(/\s+/g, ' ');
}
