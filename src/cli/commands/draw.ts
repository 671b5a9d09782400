// The drawing of a chassis: as an SVG file that carries the document and opens again, or as PDF for paper.
import {
  choiceOf,
  CommandError,
  onlyPositional,
  type Command,
  type CommandInput,
  type OptionSpec
} from '../command.ts';
import { paperNames, paperThemes, type PaperWish } from '#drawing/index.ts';
import { drawChassis, drawChassisOnPaper, views, type DrawOptions } from '../draw-chassis.ts';
import { writeBytes, writeText } from '../files.ts';
import { judge } from '../judge.ts';

const usage = 'DOC [--view diagram|pictorial] [--format svg|pdf] [--out FILE]';

export const drawOptions: readonly OptionSpec[] = [
  { name: 'theme', value: 'NAME', help: 'print, black, light or dark. print if not given.' },
  { name: 'time-limit', value: 'SECONDS', help: 'How long the layout may take. 60 if not given.' }
];

/** The options that every command that draws understands. */
export const readDrawOptions = (input: CommandInput): DrawOptions => {
  const text = input.values['time-limit'] ?? '60';
  const seconds = Number(text);
  if (!(seconds > 0 && seconds <= 3600))
    throw new CommandError(`--time-limit ${text}: give seconds, more than 0 and at most 3600`);
  return {
    theme: choiceOf(input, 'theme', paperThemes, 'print'),
    face: choiceOf(input, 'side', ['below', 'above'], 'below'),
    timeLimitMs: seconds * 1000
  };
};

const parseScale = (text: string): PaperWish['scale'] => {
  if (text === 'fit') return 'fit';
  const [, paper, set] = /^([\d.]+):([\d.]+)$/.exec(text.replaceAll(' ', '')) ?? [];
  const scale = Number(paper) / Number(set);
  if (!(scale > 0 && Number.isFinite(scale)))
    throw new CommandError(`--scale ${text}: give fit, or paper to set as in 1:1 or 1:2`);
  return scale;
};

const readPaperWish = (input: CommandInput): PaperWish => ({
  paper: choiceOf(input, 'paper', paperNames, 'A4'),
  scale: parseScale(input.values['scale'] ?? 'fit'),
  across: Number(input.values['across'] ?? '1')
});

const formats = ['svg', 'pdf', 'png'] as const;
/** By the option, else by how the file is called. */
const formatOf = (input: CommandInput): 'svg' | 'pdf' => {
  const ending = formats.find((name) => input.values['out']?.toLowerCase().endsWith(`.${name}`));
  const format = choiceOf(input, 'format', formats, ending ?? 'svg');
  if (format === 'png')
    throw new CommandError(
      'PNG needs a browser to paint it: save it under Share in the app, or turn the SVG into one'
    );
  return format;
};

export const drawCommand: Command = {
  name: 'draw',
  usage,
  help: 'Draw a chassis as SVG or PDF, every wire by the insulation class it needs.',
  options: [
    {
      name: 'view',
      value: 'NAME',
      help: 'diagram, laid out to be read, or pictorial, to scale. diagram if not given.'
    },
    { name: 'side', value: 'NAME', help: 'below or above, of the pictorial. below if not given.' },
    {
      name: 'of',
      value: 'NAME',
      help: "Only a wire's number or a part's reference, and round it."
    },
    { name: 'format', value: 'NAME', help: 'svg or pdf; as the file is called if not given.' },
    { name: 'paper', value: 'NAME', help: `pdf: ${paperNames.join(', ')}. A4 if not given.` },
    { name: 'scale', value: 'P:S', help: 'pdf: fit, or paper to set as in 1:1. fit if not given.' },
    { name: 'across', value: 'N', help: 'pdf, fit: so many sheets side by side. 1 if not given.' },
    { name: 'out', value: 'FILE', help: 'The file to write; SVG to stdout if not given.' },
    ...drawOptions
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `draw ${usage}`);
    const view = choiceOf(input, 'view', views, 'diagram');
    const format = formatOf(input);
    const { of, out } = input.values;
    const options = { ...readDrawOptions(input), ...(of === undefined ? {} : { of }) };
    if (format === 'pdf') {
      if (out === undefined)
        throw new CommandError('--out is missing: a PDF goes to a file, not to the terminal');
      const wish = readPaperWish(input);
      const judged = await judge(path, terminal);
      await writeBytes(out, await drawChassisOnPaper(path, judged, view, options, wish, terminal));
      return 0;
    }
    const svg = await drawChassis(path, await judge(path, terminal), view, options, terminal);
    if (out === undefined) terminal.out(svg);
    else await writeText(out, svg);
    return 0;
  }
};
