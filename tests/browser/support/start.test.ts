import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { expect, test } from 'vitest';
import { projectFolder } from '../../../src/commands/project.mjs';

const command = join(projectFolder, 'src/commands/start.mjs');

// Here and not among the unit tests because the command serves the built app.
test('npm start prints its address on a line of its own, answers there, and ends when told to', async () => {
  const child = spawn(process.execPath, [command, '--port', '0'], { cwd: projectFolder });
  const ended = once(child, 'exit');
  try {
    let address = '';
    for await (const line of createInterface({ input: child.stdout })) {
      if (line.startsWith('http')) {
        address = line;
        break;
      }
    }
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/$/);
    const response = await fetch(address);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-security-policy')).toMatch(/^default-src 'none'/);
    expect(await response.text()).toContain('<title>');
  } finally {
    child.kill('SIGTERM');
  }
  expect(await ended).toEqual([0, null]);
});

test.each([['--port', 'abc'], ['--haste'], ['5000']])(
  'npm start -- %s %s says what it takes',
  async (...args) => {
    const child = spawn(process.execPath, [command, ...args], { cwd: projectFolder });
    let said = '';
    child.stderr.on('data', (part: Buffer) => {
      said += part.toString();
    });
    expect(await once(child, 'close')).toEqual([1, null]);
    expect(said).toBe('npm start takes one option, the port: npm start -- --port 5000\n');
  },
);
