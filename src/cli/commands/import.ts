// A wire list from a spreadsheet becomes a chassis document.
import { saveDocument } from '#document/index.ts';
import { CommandError, onlyPositional, type Command } from '../command.ts';
import { writeText } from '../files.ts';
import { readChassisFromList } from '../read-chassis.ts';

const usage = 'LIST --out DOC';

export const importCommand: Command = {
  name: 'import',
  usage,
  help: 'Read a wire list (CSV, semicolons, tabs or XLSX) into a chassis document.',
  options: [{ name: 'out', value: 'DOC', help: 'The document to write, *.chassis.json.' }],
  run: async (input, terminal) => {
    const path = onlyPositional(input, 'LIST', `import ${usage}`);
    const out = input.values['out'];
    if (out === undefined) throw new CommandError(`--out is missing: use import ${usage}`);
    const document = await readChassisFromList(path, terminal);
    await writeText(out, saveDocument(document));
    terminal.say(
      `${out}: ${Object.keys(document.wires).length} wires, ${Object.keys(document.parts).length} parts`
    );
    return 0;
  }
};
