/**
 * Who may import whom. Dependencies go one way:
 *
 *   trade <- formula <- tables <- notebook <- starter
 *   trade <- plan (<- solver)  <- notebook <- cells <- shell
 *            tables <- import <- cells, shell
 *
 * Each layer's rule lists all that the layer may reach; anything else is named with the rule. Type-only
 * imports count: a layer that needs another's types knows of it.
 */

/** Matches packages by their folder. */
const packages = (...names) => `(^|/)node_modules/(${names.join('|')})/`;

/** One rule: `from` may reach what one of `allowed` matches, and nothing else. */
const layer = (name, from, allowed, comment, fromNot) => ({
  name,
  comment,
  severity: 'error',
  from: fromNot ? { path: from, pathNot: fromNot } : { path: from },
  to: { pathNot: allowed, couldNotResolve: false },
});

const LIT = packages('lit', 'lit-html', 'lit-element', '@lit/[^/]+');

module.exports = {
  forbidden: [
    layer(
      'trade-stands-alone',
      '^src/trade/',
      ['^src/trade/', packages('@stdlib/[^/]+')],
      'The trade mathematics is plain functions of numbers: it knows no other layer, and of packages only @stdlib.',
    ),
    layer(
      'formula-reads-trade',
      '^src/formula/',
      ['^src/(formula|trade)/', packages('mathjs', '@stdlib/[^/]+')],
      'The formula language knows the trade mathematics, mathjs and @stdlib; no page, no storage, no graph.',
    ),
    layer(
      'tables-read-formula',
      '^src/tables/',
      ['^src/(tables|formula)/', packages('papaparse', '@types/papaparse')],
      'Tables and CSV reading know the formula language (its units and kinds) and papaparse.',
    ),
    layer(
      'plan-stands-alone',
      '^src/plan/',
      ['^src/plan/(?!solver/)', '^src/trade/'],
      'The plan is plain data and reckoning: it knows the trade mathematics alone; how it is solved is its solver’s.',
      '^src/plan/solver/',
    ),
    layer(
      'solver-solves-plans',
      '^src/plan/solver/',
      ['^src/plan/', packages('highs')],
      'The solver knows the plan and HiGHS, which nothing else may import.',
    ),
    layer(
      'import-reads-files',
      '^src/import/',
      [
        '^src/(import|tables|formula)/',
        packages('papaparse', '@types/papaparse', 'geographiclib-geodesic', 'saxes'),
      ],
      'Importing reads other people’s files: it knows tables, units, and the packages that parse.',
    ),
    layer(
      'notebook-is-headless',
      '^src/notebook/',
      [
        '^src/notebook/(?!storage/)',
        '^src/(formula|tables|trade)/',
        '^src/plan/(?!solver/)',
        packages('@observablehq/runtime', 'valibot'),
      ],
      'The live notebook runs in Node and in a worker: no page, no Lit; it does not know where it is kept.',
      '^src/notebook/storage/',
    ),
    layer(
      'storage-keeps-notebooks',
      '^src/notebook/storage/',
      ['^src/notebook/', '^src/(formula|tables)/', packages('idb-keyval', 'valibot')],
      'Storage knows the notebook that it keeps and idb-keyval, which nothing else may import.',
    ),
    layer(
      'starter-is-a-notebook',
      '^src/starter/',
      ['^src/starter/', '^src/notebook/(?!storage/)', '^src/tables/', '^datasets/'],
      'The default notebook is data: it is made of documents and CSV files only.',
    ),
    layer(
      'cells-sit-on-the-notebook',
      '^cells/',
      [
        '^cells/',
        '^src/notebook/(?!storage/)',
        '^src/(formula|tables|import|trade)/',
        '^src/plan/(?!solver/)',
        LIT,
        packages('micromark', '@observablehq/plot', '@codemirror/[^/]+'),
      ],
      'Cells show and edit the notebook with Lit, micromark and CodeMirror; they know neither the shell nor the storage.',
    ),
    layer(
      'shell-is-on-top',
      '^src/shell/',
      ['^src/(?!commands/)', '^cells/', '^datasets/', LIT, packages('workbox-[^/]+')],
      'The shell puts everything on one page; of packages it knows Lit, and Workbox to work offline.',
    ),
    {
      name: 'commands-are-apart',
      comment: 'The commands run before anything is installed: they know only what comes with Node.',
      severity: 'error',
      from: { path: '^src/commands/' },
      to: { dependencyTypesNot: ['core'], pathNot: '^src/commands/' },
    },
    {
      name: 'only-commands-use-node',
      comment: 'All but the commands runs in a browser.',
      severity: 'error',
      from: { path: '^(src|cells)/', pathNot: '^src/commands/' },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'no-tests-in-the-app',
      comment: 'Nothing in the app imports from the tests.',
      severity: 'error',
      from: { path: '^(src|cells)/' },
      to: { path: '^tests/' },
    },
    {
      name: 'no-development-packages',
      comment:
        'What the app imports stands under dependencies in package.json; types alone may come from @types.',
      severity: 'error',
      from: { path: '^(src|cells)/' },
      to: { dependencyTypes: ['npm-dev', 'npm-no-pkg', 'npm-unknown'], pathNot: '(^|/)node_modules/@types/' },
    },
    {
      name: 'no-circle',
      comment: 'Two files that need each other cannot be read apart: move what they share into a third.',
      severity: 'error',
      from: {},
      to: { circular: true },
    },
    {
      name: 'no-orphan',
      comment: 'Nothing imports this file and it imports nothing: it is dead, or an import is missing.',
      severity: 'error',
      from: {
        orphan: true,
        pathNot: [
          '\\.d\\.ts$',
          '^src/shell/main\\.ts$',
          '^src/shell/offline/service-worker\\.ts$',
          '^cells/note/named-characters\\.ts$',
          '^src/commands/',
        ],
      },
      to: {},
    },
    {
      name: 'all-found',
      comment: 'The imported file or package does not exist.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '\\.(css|svg)($|\\?)' },
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
    reporterOptions: { text: { highlightFocused: false } },
  },
};
