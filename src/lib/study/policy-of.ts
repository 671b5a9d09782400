// The policy of a document: the defaults with what the document says otherwise.
import { defaultPolicy, type ChassisDocument, type Policy } from '#document/index.ts';
import { keepFields } from './same.ts';

export const policyOf = (document: ChassisDocument, before?: Policy): Policy => {
  const given = Object.entries(document.policy).filter(([, value]) => value !== undefined);
  return keepFields(before, { ...defaultPolicy, ...Object.fromEntries(given) });
};
