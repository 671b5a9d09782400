// The pin walk as a state machine: at which terminal of which part one stands, which of the leads noted
// there still wait to be asked about, and what follows from each thing that is said. The colours of all
// leads at a terminal can be given first and their far ends after; when the last has been answered, the
// walk goes on by itself.
import type { Edit, Id, TerminalRef } from '#document/index.ts';
import type { Study, TerminalEntry } from '#study/index.ts';
import { terminalText } from '#study/index-document.ts';
import { terminalKey } from '#study/terminal-key.ts';
import type { EndReading } from '../schedule/end-text.ts';
import { joinWires } from './join-wires.ts';
import {
  endInSplice,
  noteLead,
  removeLead,
  setFarEnd,
  setLeadsCounted,
  teeOnto,
  withFarEnd
} from './lead-edits.ts';
import { farWords, leadName } from './lead-words.ts';
import { countLeads, leadsAtTerminal, refOf, type Lead } from './leads.ts';
import {
  askedLead,
  entryOf,
  openLeads,
  stopsOf,
  type Walk,
  type WalkEvent,
  type WalkStep,
  type WalkWorld
} from './walk-state.ts';

const stay = (walk: Walk, words: string | null = null): WalkStep => ({ walk, edit: null, words });

const labelOf = (study: Study, entry: TerminalEntry): string => terminalText(study.document, entry);

const standAt = (walk: Walk, entry: TerminalEntry): Walk => ({
  ...walk,
  terminal: entry.terminal.id,
  open: [],
  isDone: false
});

const goOn = (walk: Walk, { study }: WalkWorld, by: 1 | -1): { walk: Walk; words: string } => {
  const stops = stopsOf(study, walk.part);
  const at = stops.findIndex(({ terminal }) => terminal.id === walk.terminal);
  // From the look back the way back leads to the last terminal, not past it.
  const next = stops[walk.isDone ? stops.length - 1 : at + by];
  if (next !== undefined) return { walk: standAt(walk, next), words: labelOf(study, next) };
  if (by < 0) return { walk, words: 'this is the first terminal' };
  return { walk: { ...walk, open: [], isDone: true }, words: 'that was the last terminal' };
};

/** After an answer: the next lead that waits, the rest that was counted, or the next terminal. */
const afterAnswer = (walk: Walk, lead: Lead, world: WalkWorld, words: string): WalkStep => {
  const left = openLeads(walk, world.study).filter(({ key }) => key !== lead.key);
  const here = { ...walk, open: left.map(({ key }) => key) };
  const entry = entryOf(walk, world.study);
  const next = left[0];
  if (next !== undefined) return stay(here, `${words}. Where does the ${leadName(next)} go?`);
  const missing = entry === undefined ? 0 : (countLeads(world.study, entry).unaccounted ?? 0);
  if (missing > 0) return stay(here, `${words}; ${missing} not accounted for`);
  const gone = goOn(here, world, 1);
  return stay(gone.walk, `${words}. Now ${gone.words}`);
};

const answer = (
  walk: Walk,
  world: WalkWorld,
  make: (lead: Lead, entry: TerminalEntry) => Edit | string,
  words: (lead: Lead) => string
): WalkStep => {
  const entry = entryOf(walk, world.study);
  const lead = askedLead(walk, world.study);
  if (entry === undefined || lead === null) {
    return stay(walk, 'say first what is seen here: a colour, or a part');
  }
  const edit = make(lead, entry);
  if (typeof edit === 'string') return stay(walk, edit);
  return { ...afterAnswer(walk, lead, world, words(lead)), edit };
};

const isHere = (reading: EndReading, { part, terminal }: Walk): boolean =>
  reading.kind === 'terminal' && reading.at.part === part && reading.at.terminal === terminal;

const startsHere = 'that is the terminal it starts at: press the one it goes to';

const note = (
  walk: Walk,
  { lead: noted, far = null }: Extract<WalkEvent, { kind: 'note' }>,
  world: WalkWorld
): WalkStep => {
  const entry = entryOf(walk, world.study);
  if (entry === undefined) return stay(walk, 'this terminal is gone: choose another part');
  if (far !== null && isHere(far, walk)) return stay(walk, startsHere);
  const at: TerminalRef = refOf(entry);
  const { edit, key } = noteLead(noted, at, {
    document: world.study.document,
    makeId: world.makeId
  });
  const name =
    noted.kind === 'part'
      ? noted.partKind
      : [noted.colour ?? noted.construction ?? 'a lead', noted.tracer ?? '']
          .filter(Boolean)
          .join('/');
  if (far === null || far.kind === 'open') {
    const waiting = openLeads(walk, world.study).map((lead) => lead.key);
    const words = `${name} at ${labelOf(world.study, entry)}`;
    return { walk: { ...walk, open: [...waiting, key], isDone: false }, edit, words };
  }
  const whole = withFarEnd(edit, far, walk.how);
  const end = far.kind === 'terminal' ? far.label : `"${far.text}"`;
  return { walk, edit: whole, words: `${name} from ${labelOf(world.study, entry)} to ${end}` };
};

const isWire = (walk: Walk, other: Id, world: WalkWorld): WalkStep =>
  answer(
    walk,
    world,
    (lead) => {
      if (lead.kind !== 'wire') return 'a part is no wire: press the terminal that it goes to';
      const joined = joinWires(world.study, other, lead.wire.id);
      return joined.ok ? joined.edit : joined.why;
    },
    (lead) => `${leadName(lead)}: one with wire ${world.study.document.wires[other]?.number ?? ''}`
  );

const tee = (walk: Walk, onto: Id, world: WalkWorld): WalkStep =>
  answer(
    walk,
    world,
    (lead, { part }) => {
      const wire = world.study.document.wires[onto];
      if (wire === undefined) return 'that wire is gone: press another, or a terminal';
      if (lead.kind === 'wire' && lead.wire.id === onto) return 'a wire cannot end on itself';
      const { document } = world.study;
      const edit = teeOnto(lead, wire, part.unit, walk.how, { document, makeId: world.makeId });
      return edit ?? 'this part has no second lead';
    },
    (lead) => `${leadName(lead)}: onto wire ${world.study.document.wires[onto]?.number ?? ''}`
  );

const setTracer = (walk: Walk, colour: string, { study }: WalkWorld): WalkStep => {
  const lead = askedLead(walk, study);
  if (lead === null || lead.kind === 'part')
    return stay(walk, 'a tracer belongs to a wire: tap its colour first');
  const edit: Edit = {
    kind: 'change-wire',
    args: { id: lead.wire.id, fields: { found: { tracer: colour } } }
  };
  return { walk, edit, words: `${leadName(lead)} with a ${colour} tracer` };
};

const setValue = (walk: Walk, value: string, { study }: WalkWorld): WalkStep => {
  const lead = askedLead(walk, study);
  if (lead?.kind !== 'part') return stay(walk, 'a value belongs to a part: tap the part first');
  const edit: Edit = { kind: 'change-part', args: { id: lead.part.id, fields: { value } } };
  return { walk, edit, words: `${leadName(lead)} of ${value}` };
};

const next = (walk: Walk, world: WalkWorld): WalkStep => {
  const entry = entryOf(walk, world.study);
  const { walk: gone, words } = goOn(walk, world, 1);
  if (entry === undefined || walk.isDone) return stay(gone, words);
  const { recorded, counted } = countLeads(world.study, entry);
  const isEmpty = recorded === 0 && counted === null;
  const edit = isEmpty ? setLeadsCounted(refOf(entry), 0) : null;
  const label = labelOf(world.study, entry);
  return { walk: gone, edit, words: isEmpty ? `no lead at ${label}. Now ${words}` : words };
};

const ask = (walk: Walk, key: string, { study }: WalkWorld): WalkStep => {
  const lead = leadsAtTerminal(study, terminalKey(walk.part, walk.terminal)).find(
    (one) => one.key === key
  );
  if (lead === undefined || lead.far.isFound) return stay(walk);
  const open = [key, ...walk.open.filter((other) => other !== key)];
  return stay({ ...walk, open, isDone: false }, `Where does the ${leadName(lead)} go?`);
};

const remove = (walk: Walk, key: string, { study }: WalkWorld): WalkStep => {
  const lead = leadsAtTerminal(study, terminalKey(walk.part, walk.terminal)).find(
    (one) => one.key === key
  );
  if (lead === undefined) return stay(walk);
  const open = walk.open.filter((other) => other !== key);
  return {
    walk: { ...walk, open },
    edit: removeLead(lead),
    words: `${leadName(lead)} taken away; undo brings it back`
  };
};

/** What follows from something said. The edit is made by the caller; the walk that comes with it holds
 *  only where the edit was taken. */
export const stepWalk = (walk: Walk, event: WalkEvent, world: WalkWorld): WalkStep => {
  const { study, makeId } = world;
  switch (event.kind) {
    case 'note':
      return note(walk, event, world);
    case 'far-end': {
      const { reading } = event;
      if (reading.kind === 'open') return stepWalk(walk, { kind: 'not-yet' }, world);
      const end = reading.kind === 'terminal' ? reading.label : `"${reading.text}"`;
      return answer(
        walk,
        world,
        (lead) => {
          if (isHere(reading, walk)) return startsHere;
          return setFarEnd(lead, reading, walk.how) ?? 'this part has no second lead';
        },
        (lead) => `${leadName(lead)} to ${end}`
      );
    }
    case 'is-wire':
      return isWire(walk, event.wire, world);
    case 'splice':
      return answer(
        walk,
        world,
        (lead, { part }) =>
          endInSplice(lead, part.unit, walk.how, { document: study.document, makeId }) ??
          'this part has no second lead',
        (lead) => `${leadName(lead)}: to a splice in the air`
      );
    case 'tee':
      return tee(walk, event.wire, world);
    case 'not-yet': {
      const lead = askedLead(walk, study);
      return lead === null
        ? stay(walk)
        : afterAnswer(walk, lead, world, `${leadName(lead)}: ${farWords(lead)}`);
    }
    case 'ask':
      return ask(walk, event.lead, world);
    case 'tracer':
      return setTracer(walk, event.colour, world);
    case 'value':
      return setValue(walk, event.value, world);
    case 'remove':
      return remove(walk, event.lead, world);
    case 'count': {
      const entry = entryOf(walk, study);
      if (entry === undefined) return stay(walk);
      const words =
        event.leads === null ? 'not counted' : `${event.leads} counted at ${labelOf(study, entry)}`;
      return { walk, edit: setLeadsCounted(refOf(entry), event.leads), words };
    }
    case 'how':
      return stay({ ...walk, how: event.how }, `far ends from now on: ${event.how}`);
    case 'go': {
      const entry = stopsOf(study, walk.part).find(
        ({ terminal }) => terminal.id === event.terminal
      );
      return entry === undefined ? stay(walk) : stay(standAt(walk, entry), labelOf(study, entry));
    }
    case 'next':
      return next(walk, world);
    case 'back': {
      const gone = goOn(walk, world, -1);
      return stay(gone.walk, gone.words);
    }
  }
};
