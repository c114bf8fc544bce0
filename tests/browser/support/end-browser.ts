import { afterAll } from 'vitest';
import { closeSharedBrowser } from './open-app.ts';

afterAll(closeSharedBrowser);
