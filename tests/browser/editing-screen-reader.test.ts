import type { CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { legsNotebook, withNotebook } from './support/own-notebook.ts';
import { type AppServer, serveApp } from './support/server.ts';
import { figure, tableCard } from './support/table-card.ts';

let server: AppServer;

beforeAll(async () => {
  server = await serveApp();
});

afterAll(() => server.close());

/** A node of the browser's accessibility tree, its ignored nodes left out. */
interface AxNode {
  readonly role: string;
  readonly name: string;
  readonly children: readonly AxNode[];
}

/** The whole tree that the browser hands to a screen reader. */
async function accessibilityTree(page: Page): Promise<AxNode> {
  const session = await page.context().newCDPSession(page);
  try {
    return await treeOf(session);
  } finally {
    await session.detach();
  }
}

async function treeOf(session: CDPSession): Promise<AxNode> {
  const { nodes } = await session.send('Accessibility.getFullAXTree');
  const byId = new Map(nodes.map((node) => [node.nodeId, node]));
  const shown = (id: string): AxNode[] => {
    const node = byId.get(id);
    if (node === undefined) return [];
    const children = (node.childIds ?? []).flatMap(shown);
    if (node.ignored) return children;
    return [
      {
        role: String(node.role?.value ?? ''),
        name: String(node.name?.value ?? '')
          .replace(/\s+/g, ' ')
          .trim(),
        children,
      },
    ];
  };
  return shown(nodes[0]!.nodeId)[0]!;
}

function ofRole(node: AxNode, role: string): readonly AxNode[] {
  return node.role === role ? [node] : node.children.flatMap((child) => ofRole(child, role));
}

const CELL_ROLES = ['columnheader', 'rowheader', 'gridcell'];

/** The cells of each row of a grid, from the tree alone. */
function rowsOf(tree: AxNode, name: string): readonly (readonly AxNode[])[] {
  const grid = ofRole(tree, 'grid').find((node) => node.name === name);
  if (grid === undefined) throw new Error(`the tree has no grid called ${name}`);
  return ofRole(grid, 'row').map((row) => row.children.filter(({ role }) => CELL_ROLES.includes(role)));
}

/** A heading and its unit for every column of a table, as its notebook has them. */
interface Head {
  readonly title: string;
  readonly unit: string;
}

interface PageApp {
  readonly session: {
    readonly notebook: {
      readonly document: {
        readonly cells: readonly {
          readonly title: string;
          readonly columns?: readonly {
            readonly name: string;
            readonly title?: string;
            readonly unit?: string;
            readonly folded?: boolean;
          }[];
        }[];
      };
    };
  };
}

/** What the notebook itself says of the columns of a table, folded ones left out. */
function headsInNotebook(page: Page, title: string): Promise<readonly Head[]> {
  return page.evaluate((wanted) => {
    const { notebook } = (document.querySelector('sparewell-app') as unknown as PageApp).session;
    const cell = notebook.document.cells.find((each) => each.title === wanted);
    return (cell?.columns ?? [])
      .filter(({ folded }) => !folded)
      .map(({ name, title: head, unit }) => ({ title: head ?? name.replaceAll('_', ' '), unit: unit ?? '' }));
  }, title);
}

/** What a screen reader can say at one figure. */
interface Said {
  readonly column: string;
  readonly row: string;
  readonly figure: string;
}

/** What the tree gives at every figure: its own words, the head over it and the name of its row. */
function saidAt(rows: readonly (readonly AxNode[])[]): readonly (readonly Said[])[] {
  const [heads = [], ...others] = rows;
  return others.map((cells) => {
    expect(cells.length).toBe(heads.length);
    const named = cells.filter(({ role }) => role === 'rowheader');
    expect(named.map(({ name }) => name)).toEqual([cells[0]!.name]);
    return cells.map(({ name }, at) => ({ column: heads[at]!.name, row: named[0]!.name, figure: name }));
  });
}

test('the accessibility tree of a table names column, row and unit at every cell', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const legs = tableCard(page, 'Legs');
    await figure(legs, 0, 1).focus();
    const expected = await headsInNotebook(page, 'Legs');
    // Without units in more than one column the test would prove nothing of them.
    expect(expected.filter(({ unit }) => unit !== '').length).toBeGreaterThan(2);
    const rows = rowsOf(await accessibilityTree(page), 'Legs');
    expect(rows[0]!.map(({ role }) => role)).toEqual(expected.map(() => 'columnheader'));
    const said = saidAt(rows);
    expect(said.length).toBeGreaterThan(5);
    for (const cells of said)
      for (const [at, { column, row, figure: words }] of cells.entries()) {
        const { title, unit } = expected[at]!;
        expect(column).toBe(`${title} ${unit}`.trim());
        expect(row).not.toBe('');
        expect(words, `${row}, ${column}`).not.toBe('');
      }
    expect(new Set(said.map(([name]) => name!.row)).size).toBe(said.length);
  });
});

test('a figure that is being written names its column, row and unit by itself', async () => {
  await withNotebook({ server }, legsNotebook(), async ({ page }) => {
    const legs = tableCard(page, 'Legs');
    await figure(legs, 0, 1).focus();
    const row = rowsOf(await accessibilityTree(page), 'Legs')[1]![0]!.name;
    await page.keyboard.press('Enter');
    await legs.locator('sw-figure-field input').waitFor();
    const grid = ofRole(await accessibilityTree(page), 'grid').find(({ name }) => name === 'Legs')!;
    expect(ofRole(grid, 'textbox').map(({ name }) => name)).toEqual([`Length, ${row}, in km`]);
  });
});
