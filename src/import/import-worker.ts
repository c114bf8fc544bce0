import { hostImport } from './import-host.ts';
import type { ImportPort } from './import-protocol.ts';

// The worker's own scope is the port: what the page posts arrives here.
hostImport(globalThis as unknown as ImportPort);
