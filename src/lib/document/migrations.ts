// Documents of earlier versions are brought to the newest one step at a time, by pure functions.
//
// When the schema changes in a way that a document of the version before would not pass, or would say
// something else: copy the schema as it was to a file of its own, `schema-v1.ts`, never to be changed
// again; raise `documentVersion`; and add the step to this list.
import type * as z from 'zod';
import { issueInWords, type IssueWords } from './issue-words.ts';
import type { JsonRecord } from './plain-json.ts';
import { documentSchemaV1 } from './schema-v1.ts';

export interface Migration {
  /** The version that it takes; it gives the one after. */
  readonly from: number;
  /** The frozen schema of that version. */
  readonly schema: z.ZodType<JsonRecord>;
  /** Takes a document that passes `schema`, and leaves it unchanged. Unknown keys must survive. */
  readonly migrate: (document: JsonRecord) => JsonRecord;
}

/** One step for each version before the newest, oldest first. Version 1 is the first there is. */
export const migrations: readonly Migration[] = [
  {
    from: 1,
    schema: documentSchemaV1,
    // Keys of these names were unknown ones until then: what does not fit stands under a name of its own.
    migrate: (document) => {
      const moved = { ...document };
      for (const record of ['photos', 'patterns', 'callouts', 'shelf']) {
        if (moved[record] !== undefined) moved[`${record} of version 1`] = moved[record];
        moved[record] = {};
      }
      return moved;
    }
  }
];

export type MigrationResult =
  | { readonly ok: true; readonly document: JsonRecord }
  /** What the schema of the document's own version had against it. */
  | { readonly ok: false; readonly issues: readonly IssueWords[] };

/** The document as the newest version has it.
 *  @param version the document's own, which `steps` must reach from
 *  @throws RangeError where a step is missing */
export const migrateDocument = (
  document: JsonRecord,
  version: number,
  newest: number,
  steps: readonly Migration[] = migrations
): MigrationResult => {
  let current = document;
  for (let at = version; at < newest; at++) {
    const step = steps.find(({ from }) => from === at);
    if (!step) throw new RangeError(`no step leads from document version ${at} to ${at + 1}`);
    const parsed = step.schema.safeParse(current);
    if (!parsed.success) {
      const value = current;
      const issues = parsed.error.issues.flatMap((issue) => issueInWords(issue, value));
      return { ok: false, issues };
    }
    current = { ...step.migrate(parsed.data), version: at + 1 };
  }
  return { ok: true, document: current };
};
