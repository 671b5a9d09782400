// All that must hold, in one run: types, lint, unit, property and reference tests, the command
// line on the built package, and the editor in a real Chromium. The last line counts them all.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const top = dirname(dirname(fileURLToPath(import.meta.url)));
process.chdir(top);
const reports = join(top, 'test-results', 'reports');
rmSync(reports, { recursive: true, force: true });
mkdirSync(reports, { recursive: true });

let passed = 0;
let failed = 0;
const broken = [];

const run = (command, words, environment = {}) =>
  new Promise((resolve) => {
    const child = spawn(command, words, {
      stdio: ['ignore', 'inherit', 'inherit'],
      env: { ...process.env, ...environment }
    });
    child.on('error', () => resolve(127));
    child.on('close', (code) => resolve(code ?? 1));
  });
const tool = (name) => join(top, 'node_modules', '.bin', name);
const heading = (words) => console.log(`\n— ${words}`);

/** A step that is one yes or no. */
const step = async (name, command, words) => {
  heading(name);
  if ((await run(command, words)) === 0) passed += 1;
  else {
    failed += 1;
    broken.push(name);
  }
};

/** A step that counts its tests in a JSON report; a run that counted nothing has failed. */
const counted = async (name, command, words, report, count, environment) => {
  heading(name);
  const code = await run(command, words, environment);
  const [good, bad] = existsSync(report) ? count(JSON.parse(readFileSync(report, 'utf8'))) : [0, 0];
  passed += good;
  failed += bad;
  if (bad === 0 && (code !== 0 || good === 0)) failed += 1;
  if (bad > 0 || code !== 0 || good === 0) broken.push(name);
};

const findChromium = () =>
  [process.env.CHROMIUM, '/usr/bin/chromium', '/usr/bin/chromium-browser'].find(
    (path) => path && existsSync(path)
  );

/** Debian's Chromium, installed where this user may; or one line that says what is missing. */
const chromium = () => {
  const there = findChromium();
  if (there) return there;
  const isRoot = process.getuid?.() === 0;
  const words = (...rest) => (isRoot ? rest : ['sudo', '-n', ...rest]);
  for (const call of [
    words('apt-get', '-o', 'DPkg::Lock::Timeout=300', 'update'),
    words(
      'apt-get',
      '-o',
      'DPkg::Lock::Timeout=300',
      'install',
      '-y',
      '--no-install-recommends',
      'chromium'
    )
  ]) {
    const [command, ...rest] = call;
    spawnSync(command, rest, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    });
  }
  const installed = findChromium();
  if (!installed) {
    console.error(
      'Chromium is missing and could not be installed: run "sudo apt-get install chromium", then npm test again.'
    );
    process.exit(1);
  }
  return installed;
};

const browser = chromium();

await step('types', tool('svelte-kit'), ['sync']);
await step('types: svelte-check', tool('svelte-check'), [
  '--tsconfig',
  './tsconfig.json',
  '--fail-on-warnings'
]);
await step('lint: eslint', tool('eslint'), ['--config', '.config/eslint.config.js', '.']);
await step('lint: prettier', tool('prettier'), [
  '--config',
  '.config/prettier.json',
  '--ignore-path',
  '.config/prettierignore',
  '--check',
  '--log-level',
  'warn',
  '.'
]);
await step('lint: knip', tool('knip'), ['--config', '.config/knip.json']);
await step('build: editor', tool('vite'), ['build', '--logLevel', 'error']);
// Before the tests, which call it from several processes at once.
await step('build: command line', process.execPath, ['.config/cli.mjs', 'help']);

const unitReport = join(reports, 'unit.json');
await counted(
  'unit, property and reference tests; the command line',
  tool('vitest'),
  ['run', '--reporter=dot', '--reporter=json', `--outputFile.json=${unitReport}`],
  unitReport,
  (report) => [report.numPassedTests, report.numFailedTests + report.numPendingTests]
);

const storyReport = join(reports, 'stories.json');
await counted(
  'stories in Chromium',
  tool('playwright'),
  ['test', '--config', 'test/e2e/playwright.config.ts'],
  storyReport,
  (report) => [
    report.stats.expected,
    report.stats.unexpected + report.stats.flaky + report.stats.skipped
  ],
  { CHROMIUM: browser, STORY_REPORT: storyReport }
);

if (broken.length > 0) console.log(`\nNot in order: ${broken.join('; ')}`);
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;
