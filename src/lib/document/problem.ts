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

/** A piece of a problem on one line, no longer than can be read: what stands in a file may be of any length. */
export const shortenPiece = (piece: string, longest = 300): string => {
  const line = piece.replaceAll(/\s*[\r\n\u2028\u2029]+\s*/g, ' ');
  return line.length > longest ? `${line.slice(0, longest - 20)}…${line.slice(-19)}` : line;
};

/** How many problems are told one by one. */
export const problemLimit = 20;

/** The first problems, none longer than can be read, and how many more there are. */
export const capProblems = (file: string, problems: readonly Problem[]): Problem[] => {
  const told = problems.slice(0, problemLimit).map((problem) => ({
    ...problem,
    place: shortenPiece(problem.place),
    wrong: shortenPiece(problem.wrong),
    wayOut: shortenPiece(problem.wayOut)
  }));
  const more = problems.length - told.length;
  if (more === 0) return told;
  return [
    ...told,
    { file, place: 'the document', wrong: `and ${more} more`, wayOut: 'mend those above first' }
  ];
};
