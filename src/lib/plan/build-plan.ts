// The plan of a whole chassis: for each wire what is done about it, out of what, and what that costs.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { serviceDataWords } from '#checks/rules/data-disagrees.ts';
import { isReplaced, type Study, type WireStudy } from '#study/index.ts';
import { formatAwg, formatVolts } from '#quantity/index.ts';
import { judgeOffer, marginOf, ratingFor } from './judge-offer.ts';
import { lookFor } from './look-for.ts';
import { offerOfPlanned, stockTypesOf } from './offers.ts';
import { colourDistance, pickFromShelf, type Picked, type Seeker } from './pick-from-shelf.ts';
import type {
  Offer,
  Plan,
  PlanOptions,
  StockType,
  WayVerdict,
  WirePlan,
  WireWant
} from './types.ts';
import { sleeveRatingV } from './sleeving.ts';
import { wantOf } from './want.ts';
import { proposeWay, waysOf } from './ways.ts';

/** What is decided of a wire before anything is taken from the shelf. */
interface Draft {
  readonly wire: Wire;
  readonly about: WireStudy;
  readonly want: WireWant | null;
  readonly ways: readonly WayVerdict[];
  readonly way: WayVerdict['way'];
  readonly by: WirePlan['by'];
  readonly why: string;
  readonly planned: Offer | null;
  readonly cutMm: number | null;
  /** The wire of the same cable that the cable is cut for. */
  readonly cutWith: Wire | null;
}

/** The plan of a study. Pure; one choice of a person, way or wire, is never overruled. */
export function buildPlan(study: Study, options: PlanOptions = {}): Plan {
  const stockTypes = stockTypesOf(study.document);
  const drafts = study.index.wires.flatMap((wire) => {
    const about = study.wires.get(wire.id);
    return about ? [draftOf(study, wire, about, options)] : [];
  });
  const picks = pickFromShelf(study, drafts.flatMap(seekerOf), stockTypes);
  const wires = drafts.map((draft) => planOf(study, draft, picks.get(draft.wire.id) ?? null));
  return { wires, byWire: new Map(wires.map((plan) => [plan.wire, plan])), stockTypes };
}

/** What the plan would say of a wire if it were as given: nothing is taken from the shelf for it.
 *  @param type what would be cut; null where it is not of the shelf */
export function planIf(
  study: Study,
  wire: Wire,
  type: StockType | null,
  options: PlanOptions = {}
): WirePlan | null {
  const about = study.wires.get(wire.id);
  if (!about) return null;
  const draft = draftOf(study, wire, about, options);
  return planOf(study, draft, type === null || !takesWire(draft.way) ? null : { type, why: null });
}

function draftOf(study: Study, wire: Wire, about: WireStudy, options: PlanOptions): Draft {
  const want = wantOf(study, wire, about, options);
  const ways = waysOf(wire, about, want);
  const proposal = proposeWay(wire, about, want, ways);
  const chosen = wire.planned.way;
  const isDone = isReplaced(wire) || wire.state === 'fitted' || wire.state === 'checked';
  const way = chosen ?? proposal.way;
  const cutWith = firstOfCable(study, wire);
  return {
    wire,
    about,
    want,
    ways,
    way,
    by: isDone ? 'done' : chosen === undefined ? 'proposal' : 'person',
    why:
      chosen === undefined || chosen === proposal.way
        ? proposal.why
        : `chosen; ${proposal.way} would be proposed: ${proposal.why}`,
    planned: hasConductor(wire) ? plannedOffer(wire, want) : null,
    cutMm: takesWire(way) && !isDone && cutWith === null ? cutOf(study, wire, about, way) : null,
    cutWith
  };
}

/** A cable is cut once, for the longest of its conductors; null where the wire is the one, or in no cable. */
function firstOfCable(study: Study, wire: Wire): Wire | null {
  if (wire.cable === undefined) return null;
  const first = study.index.wires.find(
    (mate) => mate.cable === wire.cable && mate.construction !== 'shield'
  );
  return first === undefined || first === wire ? null : first;
}

/** True where a length of wire is cut for it: all of the wire, or a piece to splice in. */
const takesWire = (way: WirePlan['way']): boolean => way === 'new wire' || way === 'splice in';

/** A piece to splice in is as long as somebody wrote down; until then as long as the whole wire, which is
 *  never too short. */
function cutOf(study: Study, wire: Wire, about: WireStudy, way: WirePlan['way']): number | null {
  if (way === 'splice in' && wire.planned.pieceMm !== undefined) return wire.planned.pieceMm;
  if (wire.cable === undefined) return about.cut?.mm ?? null;
  const cuts = study.index.wires.flatMap((mate) =>
    mate.cable === wire.cable ? (study.wires.get(mate.id)?.cut?.mm ?? []) : []
  );
  return cuts.length === 0 ? null : Math.max(...cuts);
}

const hasConductor = ({ planned }: Wire): boolean =>
  planned.awg !== undefined ||
  planned.style !== undefined ||
  planned.ratingV !== undefined ||
  planned.insulation !== undefined;

/** What somebody planned; what they left open is as wanted. */
function plannedOffer(wire: Wire, want: WireWant | null): Offer {
  const own = offerOfPlanned(wire, want?.form ?? 'insulated');
  return {
    ...own,
    awg: own.awg ?? want?.awg ?? null,
    stranding: own.stranding ?? want?.stranding ?? null,
    colour: own.colour ?? want?.colour ?? null,
    tracer: own.colour === null ? (want?.tracer ?? null) : own.tracer
  };
}

function seekerOf({
  wire,
  about,
  want,
  way,
  by,
  planned,
  cutMm,
  cutWith
}: Draft): readonly Seeker[] {
  if (!takesWire(way) || by === 'done' || want === null || cutWith !== null) return [];
  const stock = wire.planned.stock ?? null;
  return [
    {
      wire,
      about,
      want: planned ? { ...want, colour: planned.colour, tracer: planned.tracer } : want,
      cutMm,
      stock,
      isFree: stock !== null || planned !== null,
      isAskedFor: (type) => planned === null || stock !== null || isSameWire(type, planned)
    }
  ];
}

/** True for a type that is what somebody planned, in all that they said of it but the colour. */
function isSameWire(type: StockType, planned: Offer): boolean {
  if (type.form !== planned.form || type.awg !== planned.awg) return false;
  if (planned.stranding !== null && type.stranding !== planned.stranding) return false;
  if (planned.style !== null && type.style === planned.style) return true;
  return (Object.keys(planned.ratings) as (keyof Offer['ratings'])[]).every((kind) => {
    const { volts } = ratingFor(type, kind === 'any' ? ['dc', 'ac', 'pulse'] : [kind]);
    return (volts ?? 0) >= (planned.ratings[kind] ?? 0);
  });
}

function planOf(study: Study, draft: Draft, pick: Picked | null): WirePlan {
  const { wire, about, want, way, planned, ways, cutMm } = draft;
  const type = pick?.type ?? null;
  const offer = takesWire(way) ? (type ?? planned) : null;
  const judged = offer && want ? judgeOffer(study, wire, about, want, offer) : null;
  const verdict = ways.find((each) => each.way === way);
  const sleeve = verdict?.isOpen === true ? verdict.sleeve : null;
  return {
    wire: wire.id,
    way,
    by: draft.by,
    why: draft.why,
    ways,
    want,
    offer,
    stockType: type,
    stock: wire.planned.stock ?? null,
    cutMm,
    margin: judged?.margin ?? keptMargin(way, about),
    costs: costsOf(study, draft, verdict, judged?.shortfalls ?? []),
    unmet: unmetOf(draft, pick),
    notes: [...(sleeve && verdict ? [verdict.words] : []), ...notesOf(study, draft, offer)],
    sleeve
  };
}

function keptMargin(way: WirePlan['way'], about: WireStudy): WirePlan['margin'] {
  if (way === 're-sleeve') return marginOf(sleeveRatingV, about);
  return way === 'keep' && !about.isBare ? marginOf(about.foundRating?.volts ?? null, about) : null;
}

function costsOf(
  { policy }: Study,
  { wire, about, way }: Draft,
  verdict: WayVerdict | undefined,
  shortfalls: readonly string[]
): readonly string[] {
  if (wire.isPart !== undefined && way !== 'keep') return [verdict?.words ?? ''];
  if (way === 'new wire') return shortfalls;
  if (verdict && !verdict.isOpen) return [verdict.words, ...shortfalls];
  if (way === 'splice in') return shortfalls;
  const { need, foundRating } = about;
  if (way !== 'keep' || about.isBare || !need) return [];
  return foundRating && foundRating.volts < need.askedV
    ? [
        `kept: rated ${formatVolts(foundRating.volts)}, and ${formatVolts(Number(need.askedV.toPrecision(4)))} is asked for with a margin of ${policy.marginRequired}`
      ]
    : [];
}

function unmetOf({ want, way, by, planned }: Draft, pick: Picked | null): WirePlan['unmet'] {
  if (!takesWire(way) || by === 'done' || want === null || pick?.why == null) return null;
  return {
    why: pick.why,
    lookFor: lookFor(
      planned
        ? {
            ...want,
            awg: planned.awg ?? want.awg,
            stranding: planned.stranding ?? want.stranding,
            colour: planned.colour,
            tracer: planned.tracer
          }
        : want
    )
  };
}

function notesOf(study: Study, draft: Draft, offer: Offer | null): readonly string[] {
  const { wire, about, want, way, by, planned, cutMm, cutWith } = draft;
  const notes: string[] = [];
  if (cutWith && takesWire(way)) notes.push(`cut with its cable, under wire ${cutWith.number}`);
  const isCut = takesWire(way) && by !== 'done' && cutWith === null;
  if (isCut && way === 'splice in' && cutMm !== null && wire.planned.pieceMm === undefined)
    notes.push('cut as long as the whole wire until the length of the piece is written down');
  // Who repaired it may have taken what lay at hand.
  const published = wire.origin === 'earlier repair' ? serviceDataWords(wire) : null;
  if (isCut && published !== null)
    notes.push(`service data: ${published}; what was found is an earlier repair`);
  if (isCut && cutMm === null) notes.push('length not known: tape it before anything is cut');
  if (isCut && want && offer && colourDistance(want, offer) > 0) {
    notes.push(`${colourWords(offer)} in place of ${colourWords(want)}: mark both ends`);
  }
  if (isCut && offer?.awg != null && want && planned?.awg == null && offer.awg < want.awg)
    notes.push(
      `${formatAwg(offer.awg)} in place of ${formatAwg(want.awg)}: see that it goes into the lugs`
    );
  if (wire.critical?.keepLength === true) notes.push('keep its length');
  if (wire.critical?.keepPlace === true) notes.push('keep its place');
  if (wire.critical?.keepShort === true) notes.push('keep it short');
  if (wire.dress !== undefined && wire.dress !== '') notes.push(wire.dress);
  if (about.need?.beyondLadder === true)
    notes.push('more is asked for than any class of the ladder');
  const cable =
    wire.cable === undefined ? undefined : findElement(study.document.cables, wire.cable);
  if (cable && isCut) notes.push(`cable ${cable.name}`);
  return notes;
}

/** "red", "red with yellow tracer", "no colour known". */
export const colourWords = ({ colour, tracer }: Pick<Offer, 'colour' | 'tracer'>): string =>
  colour === null
    ? 'no colour known'
    : tracer === null
      ? colour
      : `${colour} with ${tracer} tracer`;
