// One bench sum: values as people write them in, result, formula, basis and source out.
import { aboutInput, runSum, SumError, sums, type Sum, type SumResult } from '#physics/index.ts';
import { CommandError, type Command } from '../command.ts';

const usage = 'ID NAME=VALUE … [--json]';

const readInputs = (words: readonly string[]): Record<string, string> => {
  const inputs: Record<string, string> = {};
  for (const word of words) {
    const cut = word.indexOf('=');
    if (cut < 1)
      throw new CommandError(`"${word}" is not NAME=VALUE: for example sum wire-size awg=22`);
    const name = word.slice(0, cut);
    if (Object.hasOwn(inputs, name)) throw new CommandError(`${name} is given twice: give it once`);
    inputs[name] = word.slice(cut + 1);
  }
  return inputs;
};

/** What was understood of the inputs, in the units that the sum reckons in. */
const inputLines = ({ inputs }: Sum, result: SumResult): string[] =>
  Object.entries(result.inputs).map(([name, value]) => {
    const { unit } = aboutInput(inputs, name);
    return `  ${name} = ${String(value)}${unit ? ` ${unit}` : ''}`;
  });

const toText = (result: SumResult, sum: Sum): string =>
  [
    sum.title,
    ...inputLines(sum, result),
    '',
    ...Object.entries(result.results).map(
      ([name, { value, unit }]) =>
        `  ${name} = ${Number(value.toPrecision(6))}${unit ? ` ${unit}` : ''}`
    ),
    '',
    `  Formula: ${result.formula}`,
    `  Basis:   ${result.basis}`,
    `  Source:  ${result.source}`,
    ''
  ].join('\n');

export const sumCommand: Command = {
  name: 'sum',
  usage,
  help: 'Work out one sum; without an ID, list them all.',
  options: [{ name: 'json', help: 'The result as JSON.' }],
  run: async (input, terminal) => {
    const [id, ...words] = input.positionals;
    if (id === undefined) {
      terminal.out(sums.map((sum) => `${sum.id.padEnd(18)} ${sum.title}`).join('\n') + '\n');
      return 0;
    }
    const sum = sums.find((known) => known.id === id);
    if (!sum)
      throw new CommandError(
        `there is no sum "${id}": choose one of ${sums.map((known) => known.id).join(', ')}`
      );
    try {
      const result = runSum(id, readInputs(words));
      terminal.out(
        input.switches.has('json') ? JSON.stringify(result, null, 1) + '\n' : toText(result, sum)
      );
      return 0;
    } catch (error) {
      if (error instanceof SumError) throw new CommandError(`sum ${id}: ${error.message}`);
      throw error;
    }
  }
};
