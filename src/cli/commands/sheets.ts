// The bench list and the test sheets, for print.
import { buildPlan, buildTestSheets } from '#plan/index.ts';
import {
  benchList,
  paperSizes,
  sheetsToPage,
  sheetToText,
  testSheetOnPaper
} from '#paperwork/index.ts';
import { choiceOf, CommandError, onlyPositional, type Command } from '../command.ts';
import { writeText } from '../files.ts';
import { judge } from '../judge.ts';

const usage = 'DOC [--only NAME] [--format html|text] [--out FILE]';
const names = ['all', 'bench', 'continuity', 'insulation', 'leakage', 'power-up'] as const;

export const sheetsCommand: Command = {
  name: 'sheets',
  usage,
  help: 'Write the bench list and the test sheets, for print.',
  options: [
    { name: 'only', value: 'NAME', help: `${names.join(', ')}. all if not given.` },
    { name: 'format', value: 'NAME', help: 'html for print, or text. html if not given.' },
    { name: 'paper', value: 'NAME', help: 'A4 or letter. A4 if not given.' },
    {
      name: 'tolerance',
      value: 'PERCENT',
      help: 'How far volts may be off, as the service data says. If not given, as written in DOC, else 20.'
    },
    { name: 'out', value: 'FILE', help: 'The file to write; stdout if not given.' }
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `sheets ${usage}`);
    const only = choiceOf(input, 'only', names, 'all');
    const format = choiceOf(input, 'format', ['html', 'text'], 'html');
    const paper = choiceOf(input, 'paper', paperSizes, 'A4');
    const percentText = input.values['tolerance'];
    const percent = Number(percentText ?? '20');
    if (!(percent > 0 && percent <= 100))
      throw new CommandError(`--tolerance ${percentText}: give per cent, more than 0 up to 100`);
    const { document, study } = await judge(path, terminal);
    const tests = buildTestSheets(study, percentText === undefined ? undefined : percent / 100).map(
      (test) => ({
        id: test.id,
        sheet: testSheetOnPaper(study, test)
      })
    );
    const bench = { id: 'bench' as const, sheet: benchList(study, buildPlan(study)) };
    const chosen = [bench, ...tests]
      .filter(({ id }) => only === 'all' || id === only)
      .map(({ sheet }) => sheet);
    const text =
      format === 'html'
        ? sheetsToPage(document, chosen, paper)
        : chosen.map(sheetToText).join('\n');
    const out = input.values['out'];
    if (out === undefined) terminal.out(text);
    else await writeText(out, text);
    return 0;
  }
};
