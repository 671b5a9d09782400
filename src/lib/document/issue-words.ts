// What the schema has against a value, in words: what is wrong and the way out. Zod's own texts
// speak to programmers.
import type * as z from 'zod';

export interface IssueWords {
  /** From the value that was parsed down to the one that is wrong. */
  readonly path: readonly PropertyKey[];
  /** Goes after the place: "is text ("20 AWG"), where a number is expected". */
  readonly wrong: string;
  readonly wayOut: string;
}

const kindsInWords: Readonly<Record<string, string>> = {
  string: 'text in quotes',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'an object in braces',
  record: 'an object in braces',
  array: 'a list in brackets'
};

const valueAt = (value: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null
        ? (inner as Record<PropertyKey, unknown>)[key]
        : undefined,
    value
  );

const shorten = (text: string, most = 40): string =>
  text.length > most ? `${text.slice(0, most)}…` : text;

const inWords = (value: unknown): string => {
  if (value === null) return 'null';
  if (typeof value === 'string') return `text ("${shorten(value)}")`;
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'an object';
  return `${typeof value === 'number' ? 'the number ' : ''}${String(value)}`;
};

const unitOf = (origin: string): string =>
  origin === 'string' ? ' characters' : origin === 'array' ? ' entries' : '';

const sizeOf = (value: unknown): string => {
  if (typeof value === 'string')
    return value === '' ? 'is empty' : `has ${value.length} characters`;
  if (Array.isArray(value)) return value.length === 0 ? 'is empty' : `has ${value.length} entries`;
  return `is ${String(value)}`;
};

/** Of the ways in which a value could have been right, the one that it comes closest to: an
 *  element of a known kind is measured against that kind alone. */
const closestBranch = (branches: readonly (readonly z.core.$ZodIssue[])[]) => {
  const isOfAnotherKind = (branch: readonly z.core.$ZodIssue[]) =>
    branch.some((issue) => issue.path.length === 1 && issue.path[0] === 'kind');
  return branches.find((branch) => !isOfAnotherKind(branch)) ?? branches.at(-1) ?? [];
};

/** One issue of a schema, or several where a choice of shapes failed, in words.
 *  @param value what was parsed, to say what stands there now. */
export const issueInWords = (issue: z.core.$ZodIssue, value: unknown): IssueWords[] => {
  const { path } = issue;
  const found = valueAt(value, path);
  const say = (wrong: string, wayOut: string): IssueWords[] => [{ path, wrong, wayOut }];
  const sayChoice = (values: readonly unknown[]): IssueWords[] => {
    const choices = values.map((choice) => JSON.stringify(choice)).join(', ');
    return found === undefined
      ? say('is missing', `add one of ${choices}`)
      : say(`is ${inWords(found)}`, `write one of ${choices}`);
  };
  switch (issue.code) {
    case 'invalid_type': {
      const wanted = kindsInWords[issue.expected] ?? issue.expected;
      return found === undefined
        ? say('is missing', `add ${wanted}`)
        : say(
            `is ${inWords(found)}, where ${wanted} is expected`,
            typeof found === 'string'
              ? `write ${wanted}, without quotes or unit`
              : `write ${wanted}`
          );
    }
    case 'invalid_value':
      return sayChoice(issue.values);
    // What is neither text nor a list is measured all the same where it has a length; that it is of the
    // wrong kind is told by an issue of its own.
    case 'too_small': {
      if (issue.origin === 'unknown') return [];
      const least = `${String(issue.minimum)}${unitOf(issue.origin)}`;
      return say(`${sizeOf(found)}; the least is ${least}`, `give at least ${least}`);
    }
    case 'too_big': {
      if (issue.origin === 'unknown') return [];
      const most = `${String(issue.maximum)}${unitOf(issue.origin)}`;
      return say(`${sizeOf(found)}; the most is ${most}`, `give at most ${most}`);
    }
    case 'invalid_format':
      return say(`is ${inWords(found)}: ${issue.message}`, 'write it in that form');
    case 'invalid_key': {
      const why = issue.issues[0]?.message ?? 'it has the wrong form';
      return say(`is kept under a key that cannot be used: ${why}`, 'give it another key');
    }
    case 'invalid_union':
      // Shapes that are told apart by one key, which says none of them.
      if ('options' in issue && issue.options) return sayChoice(issue.options);
      return closestBranch(issue.errors).flatMap((inner) =>
        issueInWords({ ...inner, path: [...path, ...inner.path] }, value)
      );
    default:
      return say(issue.message, 'change it so that this holds');
  }
};
