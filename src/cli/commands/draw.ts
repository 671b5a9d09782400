// The drawing of a chassis as an SVG file that carries the document and opens again.
import {
  choiceOf,
  CommandError,
  onlyPositional,
  type Command,
  type CommandInput,
  type OptionSpec
} from '../command.ts';
import { drawChassis, views, type DrawOptions } from '../draw-chassis.ts';
import { writeText } from '../files.ts';
import { judge } from '../judge.ts';

const usage = 'DOC [--view diagram|pictorial] [--out FILE.svg]';

export const drawOptions: readonly OptionSpec[] = [
  { name: 'theme', value: 'NAME', help: 'light, dark or print. print if not given.' },
  { name: 'time-limit', value: 'SECONDS', help: 'How long the layout may take. 60 if not given.' }
];

/** The options that every command that draws understands. */
export const readDrawOptions = (input: CommandInput): DrawOptions => {
  const text = input.values['time-limit'] ?? '60';
  const seconds = Number(text);
  if (!(seconds > 0 && seconds <= 3600))
    throw new CommandError(`--time-limit ${text}: give seconds, more than 0 and at most 3600`);
  return {
    theme: choiceOf(input, 'theme', ['light', 'dark', 'print'], 'print'),
    timeLimitMs: seconds * 1000
  };
};

export const drawCommand: Command = {
  name: 'draw',
  usage,
  help: 'Draw a chassis as SVG, every wire by the insulation class it needs.',
  options: [
    {
      name: 'view',
      value: 'NAME',
      help: 'diagram, laid out to be read, or pictorial, to scale. diagram if not given.'
    },
    { name: 'out', value: 'FILE.svg', help: 'The file to write; stdout if not given.' },
    ...drawOptions
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `draw ${usage}`);
    const view = choiceOf(input, 'view', views, 'diagram');
    const svg = await drawChassis(
      path,
      await judge(path, terminal),
      view,
      readDrawOptions(input),
      terminal
    );
    const out = input.values['out'];
    if (out === undefined) terminal.out(svg);
    else await writeText(out, svg);
    return 0;
  }
};
