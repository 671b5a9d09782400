// Two documents of a chassis side by side: what was added, removed and changed, in words and on a drawing.
import {
  alignIds,
  changeInOneLine,
  compareDocuments,
  countChanges,
  standingInWords
} from '#document/index.ts';
import { choiceOf, CommandError, type Command } from '../command.ts';
import { drawComparison, views } from '../draw-chassis.ts';
import { writeText } from '../files.ts';
import { judgeDocument } from '../judge.ts';
import { readChassis } from '../read-chassis.ts';
import { drawOptions, readDrawOptions } from './draw.ts';

const usage = 'FIRST SECOND [--format text|json] [--drawing FILE.svg]';

export const compareCommand: Command = {
  name: 'compare',
  usage,
  help: 'Say what the second document has that the first has not, and the other way round.',
  options: [
    { name: 'format', value: 'NAME', help: 'text or json. text if not given.' },
    {
      name: 'drawing',
      value: 'FILE.svg',
      help: 'A drawing of the second with the changes marked.'
    },
    { name: 'view', value: 'NAME', help: 'diagram or pictorial, of the drawing.' },
    ...drawOptions
  ],
  run: async (input, terminal) => {
    const [firstPath, secondPath, ...rest] = input.positionals;
    if (firstPath === undefined || secondPath === undefined || rest.length > 0)
      throw new CommandError(`give two documents: use compare ${usage}`);
    const format = choiceOf(input, 'format', ['text', 'json'], 'text');
    const view = choiceOf(input, 'view', views, 'diagram');
    const { document: first } = await readChassis(firstPath, terminal);
    const { document: second, pictures } = await readChassis(secondPath, terminal);
    const changes = compareDocuments(first, second);
    const drawing = input.values['drawing'];
    if (drawing !== undefined) {
      const judged = judgeDocument(alignIds(first, second), pictures);
      const options = readDrawOptions(input);
      await writeText(
        drawing,
        await drawComparison(secondPath, judged, changes, view, options, terminal)
      );
    }
    if (format === 'json') terminal.out(`${JSON.stringify({ changes }, null, 2)}\n`);
    else terminal.out(changes.map((change) => `${changeInOneLine(change)}\n`).join(''));
    terminal.say(standingInWords(first, second));
    terminal.say(
      `${first.identity.title} against ${second.identity.title}: ${countChanges(changes)}`
    );
    return 0;
  }
};
