// The document's schema as JSON Schema (draft 2020-12), for programs that know nothing of zod.
import * as z from 'zod';
import { documentFormat, documentSchema, documentVersion } from './schema.ts';

/** The text of `chassis.schema.json`. It says what zod's schema says, except that an element's id equals
 *  the key that it is kept under, and that the class ladder rises. */
export const buildJsonSchemaText = (): string => {
  const { $schema, ...rest } = z.toJSONSchema(documentSchema, { io: 'input' });
  const schema = {
    $schema,
    $id: `urn:${documentFormat}:schema:${documentVersion}`,
    title: 'Underchassis document',
    description: `A chassis and its wiring, version ${documentVersion}. Lengths in mm; V, A, ohm, farad, degree C. Unknown keys are allowed everywhere and must be kept.`,
    ...rest
  };
  return `${JSON.stringify(schema, null, 1)}\n`;
};
