// npm run bench: times the notebook against hand-written loops. `--json` writes the figures to stdout;
// a name as argument (`npm run bench -- graph`) runs only the benches whose file name contains it.
import { requireNode } from './node-version.mjs';
import { install } from './prepare.mjs';
import { runTool } from './project.mjs';

requireNode();
await install({ stdout: 'stderr' });
process.exitCode = (await runTool('tests/bench/run.mjs', process.argv.slice(2))) ? 0 : 1;
