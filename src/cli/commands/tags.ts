// Two flags for each wire, on label sheets.
import { flagsOf, labelSheets, tagsPage } from '#paperwork/index.ts';
import {
  choiceOf,
  CommandError,
  onlyPositional,
  type Command,
  type CommandInput
} from '../command.ts';
import { writeText } from '../files.ts';
import { judge } from '../judge.ts';

const usage = 'DOC [--labels NAME] [--skip N] [--out FILE.html]';

const numberFrom = (input: CommandInput, option: string, least: number, most: number): number => {
  const text = input.values[option] ?? '0';
  const value = Number(text);
  if (!(value >= least && value <= most))
    throw new CommandError(`--${option} ${text}: give a number from ${least} to ${most}`);
  return value;
};

export const tagsCommand: Command = {
  name: 'tags',
  usage,
  help: 'Write two flags a wire for label sheets, to be tied on before tear-out.',
  options: [
    {
      name: 'labels',
      value: 'NAME',
      help: `${labelSheets.map(({ name }) => name).join(', ')}. ${labelSheets[0]?.name ?? ''} if not given.`
    },
    { name: 'skip', value: 'N', help: 'Labels that are gone from the first sheet.' },
    { name: 'shift-x', value: 'MM', help: 'Shifts all labels to the right.' },
    { name: 'shift-y', value: 'MM', help: 'Shifts all labels down.' },
    { name: 'address', value: 'URL', help: 'Stands in front in the code; none if not given.' },
    { name: 'out', value: 'FILE', help: 'The file to write; stdout if not given.' }
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `tags ${usage}`);
    const names = labelSheets.map(({ name }) => name);
    const name = choiceOf(input, 'labels', names, names[0] ?? '');
    const sheet = labelSheets.find((each) => each.name === name);
    if (!sheet) throw new CommandError(`--labels ${name}: choose one of ${names.join(', ')}`);
    const skip = Math.floor(numberFrom(input, 'skip', 0, sheet.columns * sheet.rows - 1));
    const shiftXMm = numberFrom(input, 'shift-x', -50, 50);
    const shiftYMm = numberFrom(input, 'shift-y', -50, 50);
    const address = input.values['address'] ?? '';
    const { study } = await judge(path, terminal);
    const page = tagsPage(study, { sheet, skip, shiftXMm, shiftYMm, address });
    const nameless = study.index.wires.filter(({ number }) => number.trim() === '').length;
    terminal.say(
      `${flagsOf(study).length} flags; print at 100 %, on plain paper first: the sizes of label sheets are from memory${nameless > 0 ? `; ${nameless} wires have no number and get none` : ''}`
    );
    const out = input.values['out'];
    if (out === undefined) terminal.out(page);
    else await writeText(out, page);
    return 0;
  }
};
