import { describe, expect, it } from 'vitest';
import { noteHtml } from '../../../cells/note/note-html.ts';

describe('a note as HTML', () => {
  it('sets Markdown', () => {
    expect(noteHtml('*Check* the **limits**')).toBe('<p><em>Check</em> the <strong>limits</strong></p>');
  });

  it('starts headings under the heading of the card', () => {
    expect(noteHtml('# Legs')).toBe('<h3>Legs</h3>');
    expect(noteHtml('##### Deep')).toBe('<h6>Deep</h6>');
  });

  it('shows raw HTML as text, so that nothing in a note can act', () => {
    const set = noteHtml('<img src=x onerror=alert(1)> <script>alert(2)</script>') ?? '';
    expect(set).not.toMatch(/<(img|script)/);
    expect(set).toContain('&lt;img src=x onerror=alert(1)&gt;');
  });

  it('drops a link that would run a script', () => {
    expect(noteHtml('[tap](javascript:alert(1))')).toContain('href=""');
  });

  it('opens other links apart from the notebook', () => {
    expect(noteHtml('[manual](https://manual.example/a)')).toBe(
      '<p><a target="_blank" rel="noopener noreferrer" href="https://manual.example/a">manual</a></p>',
    );
  });

  it('leaves the words of a picture and never fetches it', () => {
    expect(noteHtml('![worn "teeth" <b>](https://spy.example/p.png "t")')).toBe(
      '<p>worn &quot;teeth&quot; &lt;b&gt;</p>',
    );
  });

  it('keeps the words of a heading or a picture that the note itself spells out', () => {
    expect(noteHtml('`<h1>` and `<img src="a" alt="b" />`')).toBe(
      '<p><code>&lt;h1&gt;</code> and <code>&lt;img src=&quot;a&quot; alt=&quot;b&quot; /&gt;</code></p>',
    );
  });

  it('leaves a note too long or too deep to plain text', () => {
    expect(noteHtml('a'.repeat(40_001))).toBeNull();
    expect(noteHtml(`${'> '.repeat(21)}deep`)).toBeNull();
    expect(noteHtml(`${'> '.repeat(3)}fine`)).toContain('fine');
  });
});
