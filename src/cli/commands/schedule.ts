// The wire schedule of a chassis, for a spreadsheet or for another program.
import { buildSchedule, scheduleToCsv, scheduleToJson } from '#paperwork/index.ts';
import { choiceOf, onlyPositional, type Command } from '../command.ts';
import { writeText } from '../files.ts';
import { judge } from '../judge.ts';

const usage = 'DOC [--format csv|json] [--out FILE]';

export const scheduleCommand: Command = {
  name: 'schedule',
  usage,
  help: 'Write the wire schedule, one row a wire.',
  options: [
    { name: 'format', value: 'csv|json', help: 'csv if not given.' },
    { name: 'out', value: 'FILE', help: 'The file to write; stdout if not given.' }
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `schedule ${usage}`);
    const format = choiceOf(input, 'format', ['csv', 'json'], 'csv');
    const { study, findings } = await judge(path, terminal);
    const rows = buildSchedule(study, findings);
    const text = format === 'json' ? scheduleToJson(rows) : scheduleToCsv(rows);
    const out = input.values['out'];
    if (out === undefined) terminal.out(text);
    else await writeText(out, text);
    return 0;
  }
};
