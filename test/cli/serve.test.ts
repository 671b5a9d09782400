// The server: the policy is sent as a header with pages and with workers, and nothing outside the
// site is served. Source: W3C Content Security Policy Level 3, "delivered via a response header".
import { spawn, type ChildProcess } from 'node:child_process';
import { request } from 'node:http';
import { readdirSync, readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

let server: ChildProcess;
let base = '';

beforeAll(async () => {
  server = spawn(
    process.execPath,
    ['.config/cli.mjs', 'serve', '--port', '0', '--host', '127.0.0.1'],
    {
      stdio: ['ignore', 'pipe', 'inherit']
    }
  );
  base = await new Promise<string>((resolve, reject) => {
    let heard = '';
    server.stdout?.on('data', (chunk: Buffer) => {
      heard += chunk.toString();
      const url = /http:\S+/.exec(heard)?.[0];
      if (url) resolve(url);
    });
    server.on('exit', (code) => reject(new Error(`the server stopped with ${code}`)));
  });
}, 240_000);

afterAll(() => void server.kill('SIGTERM'));

const policyOf = async (path: string): Promise<string> => {
  const response = await fetch(base + path);
  expect(response.status, path).toBe(200);
  return response.headers.get('content-security-policy') ?? '';
};

describe('serve', () => {
  it('sends the page with a policy that allows nothing inline or foreign', async () => {
    const policy = await policyOf('');
    expect(policy).toMatch(/default-src 'none'/);
    expect(policy).toMatch(/script-src 'self' 'sha256-/);
    expect(policy).toMatch(/frame-ancestors 'none'/);
    expect(policy).not.toMatch(/unsafe-inline|unsafe-eval|https?:/);
  });

  it('sends workers with a policy of their own', async () => {
    const assets = readdirSync('build/site/_app/immutable', { recursive: true }).map(String);
    const worker = assets.find((name) => /layout-worker.*\.js$/.test(name));
    expect(worker).toBeDefined();
    const policy = await policyOf(`_app/immutable/${worker}`);
    expect(policy).toMatch(/default-src 'none'; script-src 'self'/);
    expect(policy).not.toMatch(/unsafe-eval/);
  });

  it('packs what is text for those who take it, and the same text comes out', async () => {
    // Source: RFC 9110, 8.4.1.3 (gzip), 12.5.3 (Accept-Encoding: q=0 is "not acceptable").
    const raw = (accept?: string) =>
      new Promise<{ encoding: string | undefined; body: Buffer }>((resolve, reject) => {
        const { hostname, port } = new URL(base);
        const headers = accept === undefined ? {} : { 'Accept-Encoding': accept };
        request({ hostname, port, path: '/chassis.schema.json', headers }, (response) => {
          const chunks: Buffer[] = [];
          response.on('data', (chunk: Buffer) => chunks.push(chunk));
          response.on('end', () => {
            const encoding = response.headers['content-encoding'];
            resolve({ encoding, body: Buffer.concat(chunks) });
          });
        })
          .on('error', reject)
          .end();
      });
    const plain = await raw();
    expect(plain.encoding).toBeUndefined();
    expect(plain.body).toEqual(readFileSync('build/site/chassis.schema.json'));
    for (const accept of ['gzip', 'deflate, gzip;q=0.8']) {
      const packed = await raw(accept);
      expect(packed.encoding, accept).toBe('gzip');
      expect(gunzipSync(packed.body), accept).toEqual(plain.body);
    }
    for (const accept of ['br', 'gzip;q=0, br', 'gzip; q=0.0'])
      expect((await raw(accept)).encoding, accept).toBeUndefined();
  });

  it('serves nothing from outside the site', async () => {
    // fetch would tidy the path; a raw request does not.
    const status = await new Promise<number | undefined>((resolve, reject) => {
      const { hostname, port } = new URL(base);
      request({ hostname, port, path: '/../../package.json' }, (response) => {
        response.resume();
        resolve(response.statusCode);
      })
        .on('error', reject)
        .end();
    });
    expect(status).toBe(404);
    expect((await fetch(`${base}%2e%2e%2f%2e%2e%2fpackage.json`)).status).toBe(404);
    expect((await fetch(base, { method: 'POST' })).status).toBe(405);
  });
});
