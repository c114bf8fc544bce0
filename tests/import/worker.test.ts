import { MessageChannel, type MessagePort } from 'node:worker_threads';
import { afterEach, describe, expect, test } from 'vitest';
import { ImportClient } from '../../src/import/import-client.ts';
import { hostImport } from '../../src/import/import-host.ts';
import type { ImportPort } from '../../src/import/import-protocol.ts';
import { openSession } from '../../src/import/import-session.ts';
import { bytesOf } from './support.ts';

const open: { client: ImportClient; ports: readonly MessagePort[] }[] = [];

/** Both ends of a channel in one process: everything that crosses it is cloned as between page and worker. */
function channel(): ImportClient {
  const { port1, port2 } = new MessageChannel();
  hostImport(port2 as unknown as ImportPort);
  const client = new ImportClient(port1 as unknown as ImportPort);
  // A port of Node's that is listened to through addEventListener has to be started.
  port1.start();
  port2.start();
  open.push({ client, ports: [port1, port2] });
  return client;
}

afterEach(() => {
  for (const { client, ports } of open.splice(0)) {
    client.dispose();
    for (const port of ports) port.close();
  }
});

const LIST = 'Part no,Description,Price (EUR)\nA-1,Rear tyre,120.00\nA-2,Hub,POA\nA-3,Chain 520,84.50\n';
const BIG = `Part no,Description,Price (EUR)\n${Array.from({ length: 80_000 }, (_, at) => `B-${at},"chain, lot ${at}",${at % 90}.50`).join('\n')}\n`;

test('a file is opened, matched, read, searched and fitted through the channel', async () => {
  const client = channel();
  const opened = await client.open(bytesOf(LIST));
  expect(opened).toMatchObject({
    recordCount: 4,
    separator: { value: ',' },
    headerKey: expect.stringMatching(/^3-/),
  });
  expect(await client.call('preview', [1, 2])).toMatchObject([
    { line: 2, kind: 'row', fields: ['A-1', 'Rear tyre', '120.00'] },
    { line: 3, kind: 'row' },
  ]);
  const match = await client.call('proposeMatch', []);
  expect(await client.call('readRows', [match])).toMatchObject({
    taken: 2,
    remarked: 0,
    aside: 1,
    asideByReason: { 'on-request': 1 },
  });
  expect((await client.call('find', ['tyre', 5])).map(({ row }) => row.price)).toEqual([120]);
  const fitted = await client.call('fit', [[{ name: 'Chain 520' }]]);
  expect(fitted.rows[fitted.fits[0]!.fits[0]!.row]!.partNumber).toBe('A-3');
  expect(await client.call('mend', [2, 'price', '48.50'])).toMatchObject({ taken: 3, aside: 0 });
  expect((await client.call('rowsOf', [[2]])).map(({ price }) => price)).toEqual([48.5]);
  const change = await client.call('compare', [
    [{ partNumber: 'A1', description: null, price: 100, currency: 'EUR', priceFor: 1 }],
  ]);
  expect(change.dearer.map(({ difference }) => difference)).toEqual([20]);
});

test('choices are made anew on the same bytes, and a refusal leaves the reading as it was', async () => {
  const client = channel();
  await client.open(bytesOf('a;b\n1;"2\n'), { quote: 'none' });
  expect(await client.call('rechoose', [{ quote: '"' }])).toEqual({
    mend: 'plain-quotes',
    refusal: expect.stringContaining('Line 2'),
  });
  expect((await client.call('preview', [1, 1]))[0]!.fields).toEqual(['1', '"2']);
});

test('a refused file is answered with its sentence', async () => {
  expect(await channel().open(new Uint8Array(0))).toEqual({ refusal: expect.stringContaining('empty') });
});

describe('a large file', () => {
  test('tells its progress, and is cancelled by a signal; the next one is read', async () => {
    const client = channel();
    const stop = new AbortController();
    let told = 0;
    const opening = client.open(
      bytesOf(BIG),
      {},
      {
        signal: stop.signal,
        onProgress: () => {
          told += 1;
          stop.abort();
        },
      },
    );
    await expect(opening).rejects.toThrow('This operation was aborted');
    expect(told).toBeGreaterThanOrEqual(1);
    expect(await client.open(bytesOf(LIST))).toMatchObject({ recordCount: 4 });
  });

  test('a signal that is aborted already asks nothing', async () => {
    await expect(channel().open(bytesOf(LIST), {}, { signal: AbortSignal.abort() })).rejects.toThrow(
      'aborted',
    );
  });
});

test('the bytes are handed over, but not the neighbours of a part of a buffer', async () => {
  const client = channel();
  const whole = bytesOf(`xx${LIST}`).slice();
  await client.open(whole.subarray(2));
  expect(whole.length).toBe(LIST.length + 2);
  const own = Uint8Array.from(bytesOf(LIST));
  await client.open(own);
  expect(own.length).toBe(0);
});

test('a name that is no call of the session is refused', async () => {
  const client = channel();
  await client.open(bytesOf(LIST));
  for (const name of ['constructor', '__proto__', 'toString', 'reading']) {
    await expect(client.call(name as 'find', ['x', 1])).rejects.toThrow(`A session has no call '${name}'.`);
  }
  await expect(channel().call('find', ['x', 1])).rejects.toThrow('No file is open.');
});

test('what waits when the client is disposed is rejected', async () => {
  const client = channel();
  const opening = client.open(bytesOf(LIST));
  client.dispose();
  await expect(opening).rejects.toThrow('The import was closed.');
});

test('a session in the same thread gives the same', () => {
  const session = openSession(bytesOf(LIST));
  if ('refusal' in session) throw new Error(session.refusal);
  expect(session.summary().heads.map(({ name }) => name)).toEqual(['part_no', 'description', 'price']);
  expect(session.find('tyre', 5)).toEqual([]);
});
