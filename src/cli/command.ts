// The shape of a command, and the error that every command stops with on bad input or usage.

export interface OptionSpec {
  readonly name: string;
  readonly short?: string;
  /** What stands for the value in the help; without it the option is a switch. */
  readonly value?: string;
  readonly help: string;
}

export interface CommandInput {
  readonly positionals: readonly string[];
  /** Text of each option that was given a value. */
  readonly values: Readonly<Record<string, string>>;
  readonly switches: ReadonlySet<string>;
}

/** Where a command's results and words go: results on stdout, words on stderr. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly say: (line: string) => void;
}

export interface Command {
  readonly name: string;
  /** How it is called, after its name. */
  readonly usage: string;
  readonly help: string;
  readonly options: readonly OptionSpec[];
  /** The exit code: 0, or 1 where `check` fails on a finding. */
  readonly run: (input: CommandInput, terminal: Terminal) => Promise<number>;
}

/** Bad input or usage: one line that names the file, the place and the way out. Exit code 2. */
export class CommandError extends Error {
  override readonly name = 'CommandError';
}

/** The single positional argument that a command needs. */
export const onlyPositional = (input: CommandInput, what: string, usage: string): string => {
  const [first, ...rest] = input.positionals;
  if (first === undefined) throw new CommandError(`${what} is missing: use ${usage}`);
  if (rest.length > 0)
    throw new CommandError(`one ${what} at a time, but there is also "${rest[0]}": use ${usage}`);
  return first;
};

/** The value of an option that must be one of a few words. */
export const choiceOf = <T extends string>(
  input: CommandInput,
  option: string,
  choices: readonly T[],
  fallback: T
): T => {
  const given = input.values[option];
  if (given === undefined) return fallback;
  const choice = choices.find((word) => word === given);
  if (choice === undefined)
    throw new CommandError(`--${option} ${given}: choose one of ${choices.join(', ')}`);
  return choice;
};
