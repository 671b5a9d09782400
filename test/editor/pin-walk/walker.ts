// A person at a socket, for tests: each thing said goes through the machine, and what is to be written
// down is written down and held to what must hold of every edit.
import {
  makeIdFrom,
  type ChassisDocument,
  type Edit,
  type MakeId,
  type Wire
} from '#document/index.ts';
import { leadsAtTerminal, type Lead } from '#editor/pin-walk/leads.ts';
import { colourWords, farWords } from '#editor/pin-walk/lead-words.ts';
import { readLead } from '#editor/pin-walk/read-lead.ts';
import {
  askedLead,
  beginWalk,
  entryOf,
  type Walk,
  type WalkEvent
} from '#editor/pin-walk/walk-state.ts';
import { stepWalk } from '#editor/pin-walk/walk.ts';
import { EndNames } from '#editor/schedule/end-text.ts';
import { buildStudy, type Study } from '#study/index.ts';
import { checkEdit } from '../../helpers/check-edit.ts';
import { seeded } from '../../helpers/generate-chassis.ts';

export class Walker {
  walk: Walk;
  readonly said: string[] = [];
  document: ChassisDocument;
  /** The edits that were made, in turn. */
  readonly edits: Edit[] = [];
  readonly #makeId: MakeId;

  constructor(document: ChassisDocument, reference: string, terminal?: string, seed = 31) {
    this.#makeId = makeIdFrom(seeded(seed));
    this.document = document;
    const part = Object.values(document.parts).find((one) => one.reference === reference)!;
    const from = Object.values(part.terminals).find(({ name }) => name === terminal);
    const walk = beginWalk(this.study, part.id, from === undefined ? {} : { terminal: from.id });
    if (walk === null) throw new Error(`${reference} has no terminals`);
    this.walk = walk;
  }

  get study(): Study {
    return buildStudy(this.document);
  }

  get ends(): EndNames {
    return new EndNames(this.document, this.study.index);
  }

  /** The name of the terminal that one stands at; "done" at the look back. */
  get at(): string {
    return this.walk.isDone ? 'done' : (entryOf(this.walk, this.study)?.terminal.name ?? '');
  }

  /** The lead that is asked about, in words; "" for none. */
  get asks(): string {
    const lead = askedLead(this.walk, this.study);
    return lead === null ? '' : lead.kind === 'wire' ? colourWords(lead.wire) : lead.part.kind;
  }

  get wires(): readonly Wire[] {
    return this.study.index.wires;
  }

  leads(terminal = this.at): readonly Lead[] {
    const part = this.document.parts[this.walk.part]!;
    const id = Object.values(part.terminals).find(({ name }) => name === terminal)!.id;
    return leadsAtTerminal(this.study, `${part.id}/${id}`);
  }

  /** "blue to TS1-2" for each lead at a terminal. */
  words(terminal = this.at): string[] {
    return this.leads(terminal).map((lead) => {
      const name = lead.kind === 'wire' ? colourWords(lead.wire) : lead.part.kind;
      return `${name} ${farWords(lead)}`.trim();
    });
  }

  say(...events: readonly WalkEvent[]): this {
    for (const event of events) {
      const step = stepWalk(this.walk, event, { study: this.study, makeId: this.#makeId });
      if (step.edit !== null) {
        this.edits.push(step.edit);
        this.document = checkEdit(this.document, step.edit).document;
      }
      this.walk = step.walk;
      if (step.words !== null) this.said.push(step.words);
    }
    return this;
  }

  /** Colours tapped, one after the other: "blue", "red/yellow". */
  see(...colours: readonly string[]): this {
    for (const text of colours) {
      const [colour = '', tracer] = text.split('/');
      const lead = { kind: 'wire' as const, colour, ...(tracer === undefined ? {} : { tracer }) };
      this.say({ kind: 'note', lead });
    }
    return this;
  }

  /** A far end typed. */
  to(text: string): this {
    return this.say({ kind: 'far-end', reading: this.ends.read(text) });
  }

  /** A whole line typed. */
  line(text: string): this {
    const reading = readLead(text, this.ends);
    if (!reading.ok) throw new Error(reading.why);
    return this.say({ kind: 'note', lead: reading.lead, far: reading.far });
  }
}
