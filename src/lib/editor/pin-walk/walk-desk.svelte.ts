// The pin walk in the editor: which walk is on, what its field holds, and where what is pressed on the
// sheet goes. The walk's own steps are decided in walk.ts; here they meet the document.
import type { Edit, Id, MakeId } from '#document/index.ts';
import type { Subject } from '#drawing/display-list.ts';
import type { Study } from '#study/index.ts';
import { terminalText } from '#study/index-document.ts';
import type { Pick } from '../core/pick.ts';
import { isHalfTraced, wireName } from '../core/words.ts';
import type { EndNames } from '../schedule/end-text.ts';
import { lateWalk } from './late-walk.ts';
import { leadName } from './lead-words.ts';
import type { LineReading, LineWorld } from './read-walk-line.ts';
import type { Walk, WalkEvent } from './walk-state.ts';

export interface WalkHost {
  readonly documents: {
    readonly study: Study;
    readonly edit: (
      edit: Edit
    ) => { readonly ok: true } | { readonly ok: false; readonly problem: string };
    readonly seal: () => void;
  };
  readonly ends: () => EndNames;
  readonly makeId: MakeId;
  readonly tell: (words: string) => void;
  /** Shows where the walk stands, on the sheet as well.
   *  @param isAnotherPart goes near it, whatever was looked at before */
  readonly show: (pick: Pick, isAnotherPart: boolean) => void;
}

export type WalkView = 'parts' | 'walk' | 'waiting';

export class WalkDesk {
  isOpen = $state(false);
  view = $state<WalkView>('parts');
  /** What stands in the field. */
  text = $state('');
  /** The lead whose particulars are open, by its key. */
  openLead = $state<string | null>(null);
  /** The next wire pressed on the sheet is one that the asked lead is soldered onto. */
  isTeeing = $state(false);
  #walk = $state.raw<Walk | null>(null);
  readonly #host: WalkHost;

  readonly #study = $derived.by(() => this.#host.documents.study);
  /** Where one stands. */
  readonly entry = $derived.by(() =>
    this.#walk === null ? null : (lateWalk.value?.entryOf(this.#walk, this.#study) ?? null)
  );
  readonly walk = $derived.by(() => (this.entry === null ? null : this.#walk));
  readonly label = $derived.by(() =>
    this.entry === null ? '' : terminalText(this.#study.document, this.entry)
  );
  readonly leads = $derived.by(() =>
    this.entry === null ? [] : (lateWalk.value?.leadsAtTerminal(this.#study, this.entry.key) ?? [])
  );
  readonly count = $derived.by(() =>
    this.entry === null ? null : (lateWalk.value?.countLeads(this.#study, this.entry) ?? null)
  );
  readonly asked = $derived.by(() =>
    this.walk === null ? null : (lateWalk.value?.askedLead(this.walk, this.#study) ?? null)
  );
  readonly isDone = $derived.by(() => this.walk?.isDone === true);
  readonly ring = $derived.by(() =>
    this.entry === null
      ? null
      : (lateWalk.value?.buildRing(
          this.#study,
          this.entry.part.id,
          this.isDone ? null : this.entry.key
        ) ?? null)
  );
  readonly waiting = $derived.by(() => lateWalk.value?.listHalfTraced(this.#study) ?? []);
  /** Half-traced wires that may be the one that is asked about, the likely ones alone. */
  readonly likely = $derived.by(() =>
    this.asked?.kind === 'wire'
      ? (lateWalk.value?.proposeJoins(this.#study, this.asked.wire) ?? []).filter(
          ({ isLikely }) => isLikely
        )
      : []
  );
  readonly lineWorld = $derived.by((): LineWorld | null =>
    this.entry === null
      ? null
      : { part: this.entry.part, asked: this.asked, ends: this.#host.ends() }
  );
  readonly reading = $derived.by((): LineReading | null =>
    this.lineWorld === null
      ? null
      : (lateWalk.value?.readWalkLine(this.text, this.lineWorld) ?? null)
  );
  /** A terminal pressed on the sheet answers the question that stands. */
  readonly awaitsEnd = $derived.by(
    () => this.isOpen && this.view === 'walk' && this.asked !== null
  );

  constructor(host: WalkHost) {
    this.#host = host;
  }

  /** Opens the walk where it was left, or at the parts that can be walked. */
  open(view: WalkView = this.walk === null ? 'parts' : 'walk'): void {
    this.isOpen = true;
    this.view = view;
  }

  close(): void {
    this.isOpen = false;
    this.#letGo();
  }

  /** Another document: nothing is walked. */
  reset(): void {
    this.close();
    this.#walk = null;
    this.view = 'parts';
  }

  begin(part: Id, terminal?: Id): void {
    const works = lateWalk.value;
    if (works === null) {
      void lateWalk.load().then(
        () => this.begin(part, terminal),
        () => this.#host.tell('the pin walk could not be fetched: load the page again')
      );
      return;
    }
    const how = this.walk?.how;
    const walk = works.beginWalk(this.#study, part, {
      ...(terminal === undefined ? {} : { terminal }),
      ...(how === undefined ? {} : { how })
    });
    if (walk === null) {
      this.#host.tell('that part has no terminals to walk yet');
      return;
    }
    const isAnotherPart = this.#walk?.part !== part;
    this.#walk = walk;
    this.#letGo();
    this.open('walk');
    this.#host.tell(this.label);
    this.#show(isAnotherPart);
  }

  /** Something said on the walk; each is one step of undo. */
  say(event: WalkEvent): void {
    const { walk } = this;
    const works = lateWalk.value;
    if (walk === null || works === null) return;
    const { documents, makeId, tell } = this.#host;
    const step = works.stepWalk(walk, event, { study: this.#study, makeId });
    if (step.edit !== null) {
      documents.seal();
      const outcome = documents.edit(step.edit);
      if (!outcome.ok) {
        tell(outcome.problem);
        return;
      }
    }
    this.#walk = step.walk;
    this.isTeeing = false;
    if (step.walk.terminal !== walk.terminal) this.#letGo();
    if (step.words !== null) tell(step.words);
    if (step.walk.terminal !== walk.terminal) this.#show();
  }

  /** Takes what stands in the field. */
  enter(): void {
    const { reading } = this;
    if (reading === null) return;
    if (!reading.ok) {
      this.#host.tell(reading.why);
      return;
    }
    this.text = '';
    this.say(reading.event);
  }

  /** A press on the sheet while the walk is open. True: it was the walk's. */
  takePress(subject: Subject | null): boolean {
    if (!this.isOpen || this.view !== 'walk' || this.walk === null || subject === null)
      return false;
    if (subject.kind === 'terminal') return this.#takeTerminal(subject.id);
    if (subject.kind === 'wire' && this.asked !== null) return this.#takeWire(subject.id);
    return false;
  }

  /** Another terminal for the part that is walked: one that nobody knew of. */
  addTerminal(): void {
    const works = lateWalk.value;
    if (this.entry === null || works === null) return;
    const { part } = this.entry;
    const names = Object.values(part.terminals).map(({ name }) => Number(name));
    const highest = Math.max(0, ...names.filter(Number.isInteger));
    const made = works.addTerminal(part, String(highest + 1), this.#host.makeId);
    this.#host.documents.seal();
    const outcome = this.#host.documents.edit(made.edit);
    if (!outcome.ok) this.#host.tell(outcome.problem);
    else this.say({ kind: 'go', terminal: made.id });
  }

  /** Joins two half-traced wires from the list of those that wait. */
  join(keep: Id, gone: Id): void {
    const works = lateWalk.value;
    if (works === null) return;
    const joined = works.joinWires(this.#study, keep, gone);
    if (!joined.ok) {
      this.#host.tell(joined.why);
      return;
    }
    this.#host.documents.seal();
    const outcome = this.#host.documents.edit(joined.edit);
    const wire = this.#study.document.wires[keep];
    this.#host.tell(
      !outcome.ok
        ? outcome.problem
        : `one wire now: ${wire === undefined ? '' : wireName(wire)}; undo makes them two again`
    );
  }

  #takeTerminal(key: string): boolean {
    const { walk } = this;
    const entry = this.#study.index.terminalByKey.get(key);
    if (entry === undefined || walk === null) return false;
    const at = { part: entry.part.id, terminal: entry.terminal.id };
    if (this.asked !== null) {
      const label = terminalText(this.#study.document, entry);
      this.say({ kind: 'far-end', reading: { kind: 'terminal', at, label } });
    } else if (at.part === walk.part) this.say({ kind: 'go', terminal: at.terminal });
    else this.begin(at.part, at.terminal);
    return true;
  }

  #takeWire(id: Id): boolean {
    const wire = this.#study.document.wires[id];
    if (wire === undefined || this.asked === null) return false;
    if (this.isTeeing) this.say({ kind: 'tee', wire: id });
    else if (isHalfTraced(wire) && this.asked.kind === 'wire' && this.asked.wire.id !== id)
      this.say({ kind: 'is-wire', wire: id });
    else
      this.#host.tell(
        `${wireName(wire)} has both its ends: press a terminal, or say first that the ${leadName(this.asked)} is soldered onto a wire`
      );
    return true;
  }

  #show(isAnotherPart = false): void {
    if (this.entry !== null)
      this.#host.show({ kind: 'terminal', id: this.entry.key }, isAnotherPart);
  }

  #letGo(): void {
    this.text = '';
    this.openLead = null;
    this.isTeeing = false;
  }
}
