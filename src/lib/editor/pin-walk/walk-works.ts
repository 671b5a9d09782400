// What works on a walk, as one piece that is fetched after the page.
export { proposeJoins, listHalfTraced } from './half-traced.ts';
export { joinWires } from './join-wires.ts';
export { addTerminal } from './lead-edits.ts';
export { countLeads, leadsAtTerminal } from './leads.ts';
export { readWalkLine } from './read-walk-line.ts';
export { buildRing } from './ring-view.ts';
export { askedLead, beginWalk, entryOf } from './walk-state.ts';
export { stepWalk } from './walk.ts';
