// Opens the text of a document: the whole of it, or a list of what is wrong. Nothing is half-loaded.
import { issueInWords, type IssueWords } from './issue-words.ts';
import { migrateDocument, migrations, type Migration } from './migrations.ts';
import { placeInDocument } from './place-words.ts';
import { isRecord, type JsonRecord } from './plain-json.ts';
import { capProblems, type Problem } from './problem.ts';
import { findJsonFaults } from './scan-json.ts';
import { documentFormat, documentSchema, documentVersion, type ChassisDocument } from './schema.ts';

/** Characters; a chassis of a thousand wires has less than one million. */
export const documentSizeLimit = 50_000_000;

export type OpenResult =
  | {
      readonly ok: true;
      readonly document: ChassisDocument;
      /** The version that it was saved in, where that is an earlier one. */
      readonly migratedFrom?: number;
      /** The version that it was saved in, where that is a later one: to be read, not changed.
       *  The document keeps that version, so that saving it again says the truth. */
      readonly newerVersion?: number;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

type Complaint = Omit<Problem, 'file'>;

const fail = (file: string, complaints: readonly Complaint[]): OpenResult => ({
  ok: false,
  problems: capProblems(
    file,
    complaints.map((complaint) => ({ file, ...complaint }))
  )
});

const inDocument = (document: unknown, issues: readonly IssueWords[]): Complaint[] =>
  issues.map(({ path, wrong, wayOut }) => ({
    place: placeInDocument(document, path),
    wrong,
    wayOut
  }));

const complaintsOfText = (text: string): Complaint[] =>
  findJsonFaults(text).map(({ line, column, path, wrong, wayOut }) => {
    const where = `line ${line}, column ${column}`;
    const place = path.length === 0 ? where : `${placeInDocument(undefined, path)} (${where})`;
    return { place, wrong, wayOut };
  });

const validate = (value: JsonRecord) => {
  const parsed = documentSchema.safeParse(value);
  return parsed.success
    ? { document: parsed.data }
    : { issues: parsed.error.issues.flatMap((issue) => issueInWords(issue, value)) };
};

const openNewer = (file: string, value: JsonRecord, newerVersion: number): OpenResult => {
  const { document, issues } = validate({ ...value, version: documentVersion });
  if (document) {
    // The one document whose version is not the schema's: edits to it are refused.
    const kept = { ...document, version: newerVersion } as unknown as ChassisDocument;
    return { ok: true, document: kept, newerVersion };
  }
  const [first] = inDocument(value, issues);
  const why = first ? ` (${first.place} ${first.wrong})` : '';
  const wrong = `is version ${newerVersion}, and this program, which knows version ${documentVersion}, cannot read all of it${why}`;
  return fail(file, [
    { place: 'version', wrong, wayOut: 'open it in a newer version of this program' }
  ]);
};

/** The document in a text, brought to the newest version and validated; or every problem with it.
 *  @param file what the problems call it
 *  @param steps the migrations to use: those of this program, where left out */
export const openDocument = (
  text: string,
  file: string,
  steps: readonly Migration[] = migrations
): OpenResult => {
  if (text.length > documentSizeLimit) {
    const wrong = `has ${text.length} characters; the most is ${documentSizeLimit}`;
    return fail(file, [{ place: 'the file', wrong, wayOut: 'this is no chassis document' }]);
  }
  const sound = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const faults = complaintsOfText(sound);
  if (faults.length > 0) return fail(file, faults);

  const value: unknown = JSON.parse(sound);
  if (!isRecord(value) || value['format'] !== documentFormat) {
    const wrong = `is not a chassis document: its "format" is not "${documentFormat}"`;
    return fail(file, [{ place: 'the document', wrong, wayOut: 'choose a *.chassis.json file' }]);
  }
  const { version } = value;
  const oldest = Math.min(documentVersion, ...steps.map(({ from }) => from));
  if (typeof version !== 'number' || !Number.isInteger(version) || version < oldest) {
    const wrong = `is ${JSON.stringify(version) ?? 'missing'}, where a whole number from ${oldest} is expected`;
    return fail(file, [
      { place: 'version', wrong, wayOut: `a document of today has ${documentVersion}` }
    ]);
  }
  if (version > documentVersion) return openNewer(file, value, version);

  const migrated = migrateDocument(value, version, documentVersion, steps);
  if (!migrated.ok) return fail(file, inDocument(value, migrated.issues));
  const { document, issues } = validate(migrated.document);
  if (!document) return fail(file, inDocument(migrated.document, issues));
  return version < documentVersion
    ? { ok: true, document, migratedFrom: version }
    : { ok: true, document };
};
