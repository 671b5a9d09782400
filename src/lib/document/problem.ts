// What is wrong with a file, for people: every complaint names the file, the place, the mistake and the
// way out.

export interface Problem {
  readonly file: string;
  /** wires -> wire "12" -> found.awg; or a line and column where the text itself cannot be read. */
  readonly place: string;
  readonly wrong: string;
  readonly wayOut: string;
}

/** One line: file: place: what is wrong: the way out */
export const formatProblem = ({ file, place, wrong, wayOut }: Problem): string =>
  [file, place, wrong, wayOut].filter((piece) => piece !== '').join(': ');

/** How many problems are told one by one. */
export const problemLimit = 20;

/** The first problems, and how many more there are. */
export const capProblems = (file: string, problems: readonly Problem[]): Problem[] => {
  if (problems.length <= problemLimit) return [...problems];
  const more = problems.length - problemLimit;
  return [
    ...problems.slice(0, problemLimit),
    { file, place: 'the document', wrong: `and ${more} more`, wayOut: 'mend those above first' }
  ];
};
