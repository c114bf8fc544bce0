import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NotebookDocument } from '../../src/notebook/document.ts';
import { readNotebookBytes, readNotebookFile, writeNotebookFile } from '../../src/notebook/notebook-file.ts';
import { sampleNotebook } from './sample.ts';

/** The same value with the fields of every object in the opposite order. */
function turned(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turned);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .reverse()
      .map(([field, held]) => [field, turned(held)]),
  );
}

describe('notebook files', () => {
  it('are read back as they were written', () => {
    expect(readNotebookFile(writeNotebookFile(sampleNotebook()))).toEqual({ document: sampleNotebook() });
  });

  it('have the same text whatever the order in which fields were made', () => {
    const other = turned(sampleNotebook()) as NotebookDocument;
    expect(Object.keys(other)[0]).toBe('cells');
    expect(writeNotebookFile(other)).toBe(writeNotebookFile(sampleNotebook()));
  });

  it('keep a short list on one line, and no line past 110 characters where a list can be broken', () => {
    const document = sampleNotebook();
    const km = Array.from({ length: 400 }, (_, i) => i * 7.25);
    const long: NotebookDocument = {
      ...document,
      cells: [
        {
          id: 't',
          kind: 'table',
          name: 't',
          title: 'T',
          columns: [{ id: 'k', name: 'k', kind: 'number', entries: km }],
        },
      ],
    };
    expect(writeNotebookFile(document)).toContain('"options": ["dry", "wet"]');
    const lengths = writeNotebookFile(long)
      .split('\n')
      .map((line) => line.length);
    expect(Math.max(...lengths)).toBeLessThanOrEqual(110);
    expect(readNotebookFile(writeNotebookFile(long))).toEqual({ document: long });
  });

  it('carry any text and any finite number', () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: 'binary', maxLength: 40 })),
        fc.double({ noNaN: true, noDefaultInfinity: true }).map((figure) => (figure === 0 ? 0 : figure)),
        (texts, figure) => {
          const document: NotebookDocument = {
            ...sampleNotebook(),
            cells: [
              {
                id: 't',
                kind: 'table',
                name: 't',
                title: 'T',
                columns: [{ id: 'k', name: 'k', kind: 'text', entries: texts }],
              },
              {
                id: 'v',
                kind: 'value',
                name: 'v',
                title: 'V',
                content: { type: 'number', unit: '', value: figure, control: 'field' },
              },
            ],
          };
          expect(readNotebookFile(writeNotebookFile(document))).toEqual({ document });
        },
      ),
    );
  });

  it('are refused when a byte is no UTF-8, with the line where it stands', () => {
    const bytes = new TextEncoder().encode(writeNotebookFile({ ...sampleNotebook(), gist: 'über den Paß' }));
    expect(readNotebookBytes(bytes)).toMatchObject({ document: { gist: 'über den Paß' } });
    const at = bytes.indexOf(0xc3);
    const line = new TextDecoder().decode(bytes.subarray(0, at)).split('\n').length;
    expect(readNotebookBytes(bytes.with(at, 0xff))).toEqual({
      refusal: `This file is damaged or was saved in other letters than UTF-8: line ${line} cannot be read. Take another copy of it.`,
    });
  });

  it('may begin with a byte order mark', () => {
    expect(readNotebookFile(`\ufeff${writeNotebookFile(sampleNotebook())}`)).toHaveProperty(
      'document.id',
      'plateau',
    );
  });

  it.each([
    ['', 'This file is empty; choose a notebook file.'],
    [' \n', 'This file is empty; choose a notebook file.'],
    ['{"format": "sparewell-notebook",\n"version": 1,\n"id": oops}', 'This is not a whole notebook file: it'],
    ['{"format": "sparewell-notebook"', 'This is not a whole notebook file: it'],
    ['part;price\nChain;48', 'This is not a whole notebook file: it'],
    ['3', 'This is not a Sparewell notebook: the file does not hold a notebook.'],
  ])('that are none are refused with a sentence: %j', (text, sentence) => {
    const opened = readNotebookFile(text);
    expect('refusal' in opened ? opened.refusal : '').toContain(sentence);
  });
});
