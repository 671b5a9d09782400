// All that leaves the tool for one chassis, in one folder: drawing, schedule, findings, document.
import { join } from 'node:path';
import { saveDocument } from '#document/index.ts';
import {
  buildSchedule,
  countBySeverity,
  findingsToJson,
  findingsToText,
  scheduleToCsv,
  scheduleToJson
} from '#paperwork/index.ts';
import { CommandError, onlyPositional, type Command } from '../command.ts';
import { drawChassis } from '../draw-chassis.ts';
import { writeText } from '../files.ts';
import { judge } from '../judge.ts';
import { drawOptions, readDrawOptions } from './draw.ts';

const usage = 'DOC --out DIR';

export const buildCommand: Command = {
  name: 'build',
  usage,
  help: 'Write both drawings, schedule, findings and document into a folder.',
  options: [
    { name: 'out', value: 'DIR', help: 'The folder; made where it is missing.' },
    ...drawOptions
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `build ${usage}`);
    const out = input.values['out'];
    if (out === undefined) throw new CommandError(`--out is missing: use build ${usage}`);
    const options = readDrawOptions(input);
    const judged = await judge(path, terminal);
    const rows = buildSchedule(judged.study, judged.findings);
    // To scale only where somebody gave places.
    const isPlaced = judged.study.index.parts.some((part) => part.place !== undefined);
    const pictorial: [string, string][] = isPlaced
      ? [['pictorial.svg', await drawChassis(path, judged, 'pictorial', options, terminal)]]
      : [];
    const files: readonly (readonly [name: string, text: string])[] = [
      ['diagram.svg', await drawChassis(path, judged, 'diagram', options, terminal)],
      ...pictorial,
      ['schedule.csv', scheduleToCsv(rows)],
      ['schedule.json', scheduleToJson(rows)],
      ['findings.txt', findingsToText(judged.findings)],
      ['findings.json', findingsToJson(judged.findings)],
      ['document.chassis.json', saveDocument(judged.document)]
    ];
    for (const [name, text] of files) {
      await writeText(join(out, name), text);
      terminal.out(`${join(out, name)}\n`);
    }
    const counts = Object.entries(countBySeverity(judged.findings));
    terminal.say(
      `${judged.document.identity.title}: ${rows.length} wires; ${counts.map(([severity, count]) => `${count} ${severity}`).join(', ')}`
    );
    return 0;
  }
};
