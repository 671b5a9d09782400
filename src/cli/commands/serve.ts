// Serves the built editor on this machine only, with the content security policy as a header:
// workers do not inherit the policy that a page states for itself.
import { createReadStream, existsSync, readFileSync, statSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { extname, join, normalize, sep } from 'node:path';
import { promisify } from 'node:util';
import { gzip } from 'node:zlib';
import { CommandError, type Command } from '../command.ts';

const contentTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.webmanifest': 'application/manifest+json'
};

/** What is text inside and gets smaller; faces and pictures are packed already. */
const packs = new Set(['.html', '.js', '.css', '.json', '.csv', '.txt', '.svg', '.webmanifest']);
/** By file and when it was written: each is packed once. */
const packed = new Map<string, Promise<Buffer>>();

const packedFile = (file: string): Promise<Buffer> => {
  const key = `${file} ${statSync(file).mtimeMs}`;
  const known =
    packed.get(key) ?? readFile(file).then((bytes) => promisify(gzip)(bytes, { level: 9 }));
  packed.set(key, known);
  return known;
};

const takesGzip = ({ headers }: IncomingMessage): boolean =>
  /(?:^|[\s,])gzip(?!\s*;\s*q=0(?:\.0*)?(?:\s*,|\s*$))/i.test(
    headers['accept-encoding']?.toString() ?? ''
  );

/** For everything that is not a page, workers above all. */
const barePolicy =
  "default-src 'none'; script-src 'self'; connect-src 'self'; frame-ancestors 'none'";

/** The policy that a page carries for itself, with what only a header can say. */
const policyOfPage = (html: string): string => {
  const meta = /<meta http-equiv="content-security-policy" content="([^"]*)"/i.exec(html)?.[1];
  if (meta === undefined) throw new Error('a built page states no content security policy');
  return `${meta.replaceAll('&#39;', "'").replaceAll('&amp;', '&')}; frame-ancestors 'none'`;
};

const fileFor = (site: string, url: string): string | undefined => {
  let path: string;
  try {
    path = decodeURIComponent(new URL(url, 'http://here').pathname);
  } catch {
    return undefined;
  }
  const wanted = normalize(join(site, path));
  if (wanted !== site && !wanted.startsWith(site + sep)) return undefined;
  for (const candidate of [wanted, `${wanted}.html`, join(wanted, 'index.html')])
    if (existsSync(candidate) && statSync(candidate).isFile()) return candidate;
  return undefined;
};

const answer = async (
  site: string,
  request: IncomingMessage,
  response: ServerResponse
): Promise<void> => {
  const always = {
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'no-referrer',
    'Cross-Origin-Opener-Policy': 'same-origin'
  };
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    response.writeHead(405, { ...always, Allow: 'GET, HEAD' }).end();
    return;
  }
  const found = fileFor(site, request.url ?? '/');
  const file = found ?? join(site, '404.html');
  const type = contentTypes[extname(file)] ?? 'application/octet-stream';
  const isPage = extname(file) === '.html';
  const headers = {
    ...always,
    'Content-Type': type,
    'Content-Security-Policy': isPage ? policyOfPage(readFileSync(file, 'utf8')) : barePolicy,
    'Cache-Control': file.includes(`${sep}immutable${sep}`)
      ? 'public, max-age=31536000, immutable'
      : 'no-cache'
  };
  const status = found ? 200 : 404;
  const isHead = request.method === 'HEAD';
  if (packs.has(extname(file))) {
    const vary = { ...headers, Vary: 'Accept-Encoding' };
    if (takesGzip(request)) {
      const bytes = await packedFile(file);
      response.writeHead(status, {
        ...vary,
        'Content-Encoding': 'gzip',
        'Content-Length': bytes.length
      });
      response.end(isHead ? undefined : bytes);
      return;
    }
    response.writeHead(status, vary);
  } else response.writeHead(status, headers);
  if (isHead) response.end();
  else createReadStream(file).pipe(response);
};

/** Starts the server and returns once it listens. */
export const startServer = (
  site: string,
  host: string,
  port: number
): Promise<{ url: string; close: () => Promise<void> }> =>
  new Promise((resolve, reject) => {
    const server = createServer((request, response) => {
      answer(site, request, response).catch(() => {
        if (!response.headersSent) response.writeHead(500);
        response.end();
      });
    });
    server.once('error', reject);
    server.listen(port, host, () => {
      const address = server.address();
      const at = typeof address === 'object' && address ? address.port : port;
      resolve({
        url: `http://${host.includes(':') ? `[${host}]` : host}:${at}/`,
        close: () => new Promise((done) => server.close(() => done()))
      });
    });
  });

export const serveCommand: Command = {
  name: 'serve',
  usage: '[--port N] [--host NAME]',
  help: 'Serve the editor to a browser on this machine.',
  options: [
    { name: 'port', value: 'N', help: 'The port; 0 takes any free one. 4321 if not given.' },
    { name: 'host', value: 'NAME', help: 'The address to listen at. localhost if not given.' }
  ],
  run: async (input, terminal) => {
    const site = join(process.env['UNDERCHASSIS_HOME'] ?? '.', 'build', 'site');
    if (!existsSync(join(site, 'index.html')))
      throw new CommandError(`${site}: the editor is not built: run npm run build`);
    const portText = input.values['port'] ?? '4321';
    const port = Number(portText);
    if (!Number.isInteger(port) || port < 0 || port > 65_535)
      throw new CommandError(`--port ${portText}: give a whole number from 0 to 65535`);
    const host = input.values['host'] ?? 'localhost';
    const server = await startServer(site, host, port).catch((error: NodeJS.ErrnoException) => {
      throw new CommandError(
        error.code === 'EADDRINUSE'
          ? `port ${port} is taken: choose another with --port`
          : `cannot listen at ${host}:${port}: ${error.message}`
      );
    });
    terminal.out(`The editor is at ${server.url} (stop it with Ctrl+C)\n`);
    await new Promise<void>((resolve) => {
      process.once('SIGINT', resolve);
      process.once('SIGTERM', resolve);
    });
    await server.close();
    return 0;
  }
};
