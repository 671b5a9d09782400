// A chassis as one page that anyone can open, and that opens here again.
import { privateThings } from '#document/index.ts';
import { onlyPositional, type Command } from '../command.ts';
import { drawPage } from '../draw-page.ts';
import { writeText } from '../files.ts';
import { readChassis } from '../read-chassis.ts';
import { drawOptions, readDrawOptions } from './draw.ts';

const usage = 'DOC [--out FILE.html]';

/** `--with-prices` and the like. */
const withOptions = privateThings.map((thing) => ({
  thing,
  name: `with-${thing.replaceAll(' ', '-')}`
}));

export const pageCommand: Command = {
  name: 'page',
  usage,
  help: 'Write a page in one file: drawing, schedule, findings, cautions, photos, readings.',
  options: [
    { name: 'out', value: 'FILE.html', help: 'The file to write; stdout if not given.' },
    ...withOptions.map(({ name, thing }) => ({
      name,
      help: `Let ${thing} go along: left out if not given.`
    })),
    ...drawOptions
  ],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'DOC', `page ${usage}`);
    const { document, pictures } = await readChassis(path, terminal);
    const asked = withOptions.filter(({ name }) => input.switches.has(name));
    const page = await drawPage(
      path,
      { document, pictures },
      new Set(asked.map(({ thing }) => thing)),
      readDrawOptions(input),
      terminal
    );
    const out = input.values['out'];
    if (out === undefined) terminal.out(page);
    else await writeText(out, page);
    terminal.say(`${Math.ceil(page.length / 1000)} kB`);
    return 0;
  }
};
