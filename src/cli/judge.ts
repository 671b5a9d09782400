// A document read, studied and judged: what every command but `import` and `sum` starts with.
import { runChecks, type Finding } from '#checks/index.ts';
import type { ChassisDocument } from '#document/index.ts';
import { buildStudy, type Study } from '#study/index.ts';
import type { Terminal } from './command.ts';
import { readChassis, type Pictures } from './read-chassis.ts';

export interface Judged {
  readonly document: ChassisDocument;
  readonly study: Study;
  readonly findings: readonly Finding[];
  readonly pictures: Pictures;
}

export const judgeDocument = (document: ChassisDocument, pictures: Pictures): Judged => {
  const study = buildStudy(document);
  return { document, study, findings: runChecks(study), pictures };
};

export const judge = async (path: string, terminal: Terminal): Promise<Judged> => {
  const { document, pictures } = await readChassis(path, terminal);
  return judgeDocument(document, pictures);
};
