// npm run dev: the app from its sources, repainted as they change. Extra arguments go to vite.
import { requireNode } from './node-version.mjs';
import { install } from './prepare.mjs';
import { runTool, TOOL } from './project.mjs';

requireNode();
await install();
process.exitCode = (await runTool(TOOL.vite, process.argv.slice(2))) ? 0 : 1;
