// The server of the page: it goes on answering while others do not read, and is reached from this machine alone.
import { spawnSync } from 'node:child_process';
import { mkdirSync, statSync, utimesSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';

import { filesReader } from '../../packages/cli/src/commands/open.ts';
import { type Served, servePage } from '../../packages/cli/src/serve/serve-page.ts';
import { makeFolder, put } from './command.ts';

const folder = makeFolder();
mkdirSync(join(folder, 'assets'));
put(folder, 'index.html', '<!doctype html><title>page</title>');
// Text that does not pack well, so that it fills every buffer on its way.
const noise = Array.from({ length: 150_000 }, (_, i) => (Math.imul(i + 1, 2654435761) >>> 0).toString(36)).join('');
put(folder, 'assets/large.js', noise);

const closing: (() => unknown)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0).reverse()) await close();
});

async function serve(): Promise<Served & { readonly port: number }> {
  const served = await servePage(folder, null);
  closing.push(() => served.close());
  return { ...served, port: Number(new URL(served.address).port) };
}

/** A client that asks, if told what for, and never reads. */
function deafClient(port: number, path: string | null): Promise<Socket> {
  return new Promise((settle) => {
    const socket = connect(port, '127.0.0.1', () => {
      socket.pause();
      if (path !== null) socket.write(`GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`);
      settle(socket);
    });
    socket.on('error', () => {});
    closing.push(() => socket.destroy());
  });
}

describe('the server', () => {
  it('answers while 300 clients do not read', async () => {
    const { port, address } = await serve();
    await Promise.all(Array.from({ length: 300 }, (_, i) => deafClient(port, i % 3 === 0 ? null : '/assets/large.js')));
    const memory = process.memoryUsage().rss;
    for (const path of ['', 'assets/large.js', '']) {
      const before = process.cpuUsage();
      const answer = await fetch(address + path);
      expect((await answer.text()).length).toBeGreaterThan(30);
      const { user, system } = process.cpuUsage(before);
      expect((user + system) / 1000, 'milliseconds of the processor').toBeLessThan(2000);
    }
    // One packed file for all of them, not one each.
    expect((process.memoryUsage().rss - memory) / 1e6, 'megabytes more').toBeLessThan(200);
  });

  it('says whose it is, so that the page’s worker leaves other programs alone', async () => {
    const { address } = await serve();
    expect((await fetch(address)).headers.get('server')).toBe('fielded');
  });

  it('refuses a connection to every other address of this machine', async () => {
    const { port } = await serve();
    const others = Object.values(networkInterfaces())
      .flatMap((each) => each ?? [])
      .filter(({ internal }) => !internal)
      .map(({ address, scopeid }) => (scopeid ? null : address))
      .filter((address) => address !== null);
    for (const host of ['127.0.0.2', '::1', ...others]) expect(await reaches(host, port), host).toBe(false);
    expect(await reaches('127.0.0.1', port)).toBe(true);
  });

  it('is not reached from another network namespace', async ({ skip }) => {
    const { port } = await serve();
    const name = `fielded-${process.pid}`;
    const ip = (...words: string[]) => spawnSync('ip', words, { encoding: 'utf8' }).status === 0;
    if (!ip('netns', 'add', name)) skip('needs to make a network namespace');
    closing.push(() => ip('netns', 'del', name));
    const ends = [`fa${process.pid}`, `fb${process.pid}`] as const;
    if (!ip('link', 'add', ends[0], 'type', 'veth', 'peer', 'name', ends[1])) skip('needs to make a pair of links');
    closing.push(() => ip('link', 'del', ends[0]));
    ip('link', 'set', ends[1], 'netns', name);
    ip('addr', 'add', '10.213.7.1/30', 'dev', ends[0]);
    ip('link', 'set', ends[0], 'up');
    ip('netns', 'exec', name, 'ip', 'addr', 'add', '10.213.7.2/30', 'dev', ends[1]);
    ip('netns', 'exec', name, 'ip', 'link', 'set', ends[1], 'up');
    ip('netns', 'exec', name, 'ip', 'link', 'set', 'lo', 'up');
    const reach = (...places: [host: string, port: number][]) =>
      spawnSync('ip', ['netns', 'exec', name, process.execPath, '-e', tryAll(places)], { encoding: 'utf8' }).stdout;
    // Something that does listen on the link shows that the way there is open.
    const open = await import('node:net').then(({ createServer }) => createServer().listen(0, '10.213.7.1'));
    closing.push(() => open.close());
    await new Promise((settle) => open.once('listening', settle));
    const listening = (open.address() as { port: number }).port;
    const said = reach(['10.213.7.1', listening], ['10.213.7.1', port], ['127.0.0.1', port]);
    expect(said.split(' ').sort()).toEqual(
      [`10.213.7.1:${listening}=yes`, `10.213.7.1:${port}=ECONNREFUSED`, `127.0.0.1:${port}=ECONNREFUSED`].sort(),
    );
  });
});

/** A program that tries to reach each of these places, and says for each whether it did, with a space between. */
const tryAll = (places: readonly (readonly [host: string, port: number])[]) =>
  `let n=${places.length};const say=(at,word)=>process.stdout.write(at+'='+word+(--n?' ':''));for(const [h,p] of ${JSON.stringify(places)}){const s=require('net').connect(p,h,()=>{say(h+':'+p,'yes');s.destroy()});s.on('error',e=>say(h+':'+p,e.code))}`;

function reaches(host: string, port: number): Promise<boolean> {
  return new Promise((settle) => {
    const socket = connect(port, host, () => {
      socket.destroy();
      settle(true);
    });
    socket.on('error', () => settle(false));
  });
}

describe('the job that is served', () => {
  it('is parsed once, however often it is asked for, and again when it has changed', () => {
    const shop = put(folder, 'shop.yaml', 'fielded: 1\n');
    const heavy = `shop: shop.yaml\n${Array.from({ length: 4_000 }, (_, i) => `k${i}: 1\n`).join('')}`;
    const path = put(folder, 'job.yaml', heavy);
    const read = filesReader(path);
    expect(read().map(({ name }) => name)).toEqual(['job.yaml', 'shop.yaml']);
    const before = process.cpuUsage();
    for (let i = 0; i < 20; i++) read();
    expect(process.cpuUsage(before).user / 1e6, 'seconds for twenty more').toBeLessThan(0.5);
    put(folder, 'job.yaml', 'title: changed\n');
    utimesSync(path, new Date(), statSync(shop).mtime);
    expect(read()).toEqual([{ name: 'job.yaml', text: 'title: changed\n' }]);
  });
});
