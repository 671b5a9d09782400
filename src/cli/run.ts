// One call of the command line: finds the command, reads its options, and turns every failure into one
// line and an exit code. 0: done; 1: `check` found what it was told to fail on; 2: bad input.
import { parseArgs } from 'node:util';
import { shortenPiece } from '#document/index.ts';
import { CommandError, type Command, type CommandInput, type Terminal } from './command.ts';
import { buildCommand } from './commands/build.ts';
import { checkCommand } from './commands/check.ts';
import { compareCommand } from './commands/compare.ts';
import { drawCommand } from './commands/draw.ts';
import { importCommand } from './commands/import.ts';
import { pageCommand } from './commands/page.ts';
import { planCommand } from './commands/plan.ts';
import { scheduleCommand } from './commands/schedule.ts';
import { serveCommand } from './commands/serve.ts';
import { sheetsCommand } from './commands/sheets.ts';
import { sumCommand } from './commands/sum.ts';
import { tagsCommand } from './commands/tags.ts';

const commands: readonly Command[] = [
  importCommand,
  checkCommand,
  scheduleCommand,
  drawCommand,
  compareCommand,
  pageCommand,
  planCommand,
  tagsCommand,
  sheetsCommand,
  buildCommand,
  sumCommand,
  serveCommand
];

const callOf = 'npm run -s cli --';

const overview = (): string =>
  [
    'Underchassis: record the wiring of a vacuum-tube chassis, judge it, and cut the replacement from a schedule.',
    '',
    `Use: ${callOf} COMMAND …`,
    '',
    ...commands.map(
      (command) => `  ${`${command.name} ${command.usage}`.padEnd(46)} ${command.help}`
    ),
    '',
    'DOC is a chassis document (*.chassis.json, or *.chassis.zip with pictures), a wire list (CSV,',
    'semicolons or tabs) or a drawing (SVG) that Underchassis wrote. Results go to stdout, words to stderr.',
    'Exit codes: 0 done; 1 check: a finding at or above --fail-on; 2 bad input or usage.',
    '',
    `More on one command: ${callOf} COMMAND --help`,
    ''
  ].join('\n');

const helpOf = (command: Command): string =>
  [
    `Use: ${callOf} ${command.name} ${command.usage}`,
    '',
    command.help,
    ...(command.options.length > 0 ? [''] : []),
    ...command.options.map(
      ({ name, value, help }) => `  ${`--${name}${value ? ` ${value}` : ''}`.padEnd(24)} ${help}`
    ),
    ''
  ].join('\n');

/** The words after a command's name. Node's parser says what each is; what is wrong is said here. */
const readOptions = (command: Command, words: readonly string[]): CommandInput => {
  const known = new Map(command.options.map((option) => [option.name, option]));
  const { tokens } = parseArgs({
    args: [...words],
    allowPositionals: true,
    strict: false,
    tokens: true,
    options: Object.fromEntries(
      command.options.map(({ name, value }) => [
        name,
        { type: value ? ('string' as const) : ('boolean' as const) }
      ])
    )
  });
  const positionals: string[] = [];
  const values: Record<string, string> = {};
  const switches = new Set<string>();
  const more = `More: ${callOf} ${command.name} --help`;
  for (const token of tokens) {
    if (token.kind === 'positional') positionals.push(token.value);
    if (token.kind !== 'option') continue;
    const given = token.rawName;
    const option = known.get(token.name);
    if (!option) {
      const names = command.options.map(({ name }) => `--${name}`).join(', ');
      const all = names === '' ? 'it has none' : `it has ${names}`;
      throw new CommandError(`${command.name} has no option ${given}: ${all}. ${more}`);
    }
    const { value } = token;
    if (option.value === undefined) {
      if (value !== undefined)
        throw new CommandError(`${given} takes no value, but was given "${value}". ${more}`);
      switches.add(token.name);
      continue;
    }
    // What begins with a dash was meant as the next option, unless "=" ties it to this one.
    if (value === undefined || (!token.inlineValue && /^-./.test(value)))
      throw new CommandError(
        `${given} needs a value: ${given} ${option.value} (one that begins with "-" is tied on with "="). ${more}`
      );
    values[token.name] = value;
  }
  return { positionals, values, switches };
};

const runCommand = async (words: readonly string[], terminal: Terminal): Promise<number> => {
  const [name, ...rest] = words;
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
    terminal.out(overview());
    return name === undefined ? 2 : 0;
  }
  const command = commands.find((known) => known.name === name);
  if (!command)
    throw new CommandError(
      `there is no command "${name}": choose one of ${commands.map((known) => known.name).join(', ')}`
    );
  if (rest.includes('--help') || rest.includes('-h')) {
    terminal.out(helpOf(command));
    return 0;
  }
  return command.run(readOptions(command, rest), terminal);
};

/** Runs one call: its words after the program's name. Never rejects; the result is the exit code, which
 *  is 70 for a mistake of this program's own. */
export const run = async (words: readonly string[], terminal: Terminal): Promise<number> => {
  try {
    return await runCommand(words, terminal);
  } catch (error) {
    if (error instanceof CommandError) {
      terminal.say(`underchassis: ${shortenPiece(error.message, 1500)}`);
      return 2;
    }
    const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
    terminal.say(`underchassis: something went wrong that should not: ${what}`);
    return 70;
  }
};
