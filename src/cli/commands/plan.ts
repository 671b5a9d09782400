// What replaces each wire, what is cut from what, what to buy and in which order.
import { workModes } from '#plan/index.ts';
import {
  makeWholePlan,
  paperSizes,
  planSheets,
  sheetsToPage,
  sheetToText,
  wholePlanToJson
} from '#paperwork/index.ts';
import { choiceOf, onlyPositional, type Command } from '../command.ts';
import { writeText } from '../files.ts';
import { judge } from '../judge.ts';

const usage = 'DOC [--format text|html|json] [--out FILE]';

export const planCommand: Command = {
  name: 'plan',
  usage,
  help: 'Plan the replacement of each wire: shelf, cut list, shopping, order of work.',
  options: [
    { name: 'format', value: 'NAME', help: 'text, html for print, or json. text if not given.' },
    {
      name: 'order',
      value: 'NAME',
      help: `${workModes.join(', ')}. ${workModes[0]} if not given.`
    },
    {
      name: 'colours',
      value: 'NAME',
      help: 'as found, or code: by the chassis wiring code. as found if not given.'
    },
    { name: 'paper', value: 'NAME', help: 'A4 or letter, for html. A4 if not given.' },
    { name: 'out', value: 'FILE', help: 'The file to write; stdout if not given.' }
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `plan ${usage}`);
    const format = choiceOf(input, 'format', ['text', 'html', 'json'], 'text');
    const paper = choiceOf(input, 'paper', paperSizes, 'A4');
    const mode = choiceOf(input, 'order', workModes, workModes[0]);
    const colours = choiceOf(input, 'colours', ['as found', 'code'], 'as found');
    const { document, study } = await judge(path, terminal);
    const whole = makeWholePlan(study, { mode, colours });
    const sheets = planSheets(study, whole);
    const text =
      format === 'json'
        ? wholePlanToJson(whole)
        : format === 'html'
          ? sheetsToPage(document, sheets, paper)
          : sheets.map(sheetToText).join('\n');
    const out = input.values['out'];
    if (out === undefined) terminal.out(text);
    else await writeText(out, text);
    return 0;
  }
};
