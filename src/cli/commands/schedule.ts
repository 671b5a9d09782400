// The wire schedule of a chassis, for a spreadsheet or for another program.
import {
  buildSchedule,
  makeWholePlan,
  scheduleToCsv,
  scheduleToJson,
  scheduleToXlsx
} from '#paperwork/index.ts';
import { choiceOf, CommandError, onlyPositional, type Command } from '../command.ts';
import { writeBytes, writeText } from '../files.ts';
import { judge } from '../judge.ts';

const usage = 'DOC [--format csv|json|xlsx] [--out FILE]';

export const scheduleCommand: Command = {
  name: 'schedule',
  usage,
  help: 'Write the wire schedule, one row a wire.',
  options: [
    { name: 'format', value: 'csv|json|xlsx', help: 'csv if not given.' },
    { name: 'out', value: 'FILE', help: 'The file to write; stdout if not given.' }
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `schedule ${usage}`);
    const format = choiceOf(input, 'format', ['csv', 'json', 'xlsx'], 'csv');
    const { study, findings } = await judge(path, terminal);
    const rows = buildSchedule(study, findings);
    const out = input.values['out'];
    if (format === 'xlsx') {
      if (out === undefined)
        throw new CommandError('--out is missing: a workbook goes to a file, not to the terminal');
      const book = await scheduleToXlsx(study, rows, makeWholePlan(study));
      await writeBytes(out, new Uint8Array(await book.arrayBuffer()));
      return 0;
    }
    const text = format === 'json' ? scheduleToJson(rows) : scheduleToCsv(rows);
    if (out === undefined) terminal.out(text);
    else await writeText(out, text);
    return 0;
  }
};
