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

/** Programs that are not ours, which open what comes out of this one: how each is called and the Debian
 *  package that brings it. */
const outsideTools = [
  [['chromium', 'chromium-browser'], 'chromium'],
  [['pdftotext'], 'poppler-utils'],
  [['rsvg-convert'], 'librsvg2-bin'],
  [['unzip'], 'unzip'],
  [['python3'], 'python3-minimal'],
  [['soffice'], 'libreoffice-calc-nogui']
];

const placeOf = (name) =>
  (process.env.PATH ?? '')
    .split(':')
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));
const findTool = (names) => names.map(placeOf).find((path) => path !== undefined);
const findChromium = () => process.env.CHROMIUM ?? findTool(['chromium', 'chromium-browser']);
const missingPackages = () =>
  outsideTools
    .filter(([names]) =>
      names[0] === 'chromium' ? findChromium() === undefined : findTool(names) === undefined
    )
    .map(([, name]) => name);

/** Debian's packages, installed where this user may; or one line that says what is missing. */
const installOutsideTools = () => {
  const missing = missingPackages();
  if (missing.length === 0) return;
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
      ...missing
    )
  ]) {
    const [command, ...rest] = call;
    spawnSync(command, rest, {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    });
  }
  const still = missingPackages();
  if (still.length > 0) {
    console.error(
      `Missing and could not be installed: run "sudo apt-get install ${still.join(' ')}", then npm test again.`
    );
    process.exit(1);
  }
};

installOutsideTools();
const browser = findChromium();

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
