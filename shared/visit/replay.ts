import { createActor, initialTransition, transition, type ActorRefFrom, type SnapshotFrom } from 'xstate';
import type { LayoutAnswer } from '../knowledge/layout-answer.ts';
import type { Role } from '../knowledge/tree.ts';
import type { Costs } from '../planning/situation.ts';
import { emptyAirTest, foldAirTest } from './air-test/state.ts';
import { emptyArrival, foldArrival } from './arrival/state.ts';
import { ComplaintFold } from './complaint-fold.ts';
import { complaintMachine, heard, stopIndexOf, type ComplaintLogEvent } from './complaint-machine.ts';
import { effectiveEvents, redoTarget, undoTarget } from './effective-events.ts';
import type { EventOf, VisitEvent } from './events.ts';
import { emptyInspection, foldInspection } from './inspection/state.ts';
import type { PinnedTree } from './pinned-tree.ts';
import { unprovenCauses } from './plan/complaint-lines.ts';
import { isPlanEvent } from './plan/events.ts';
import { foldPlan } from './plan/fold.ts';
import { refusesPlan } from './plan/refusals.ts';
import { emptyPlan } from './plan/state.ts';
import { recordedResults } from './recorded-value.ts';
import { emptyRoad, foldRoad, refusesRoad } from './road/state.ts';
import type { ComplaintPhase, IgnoredEvent, VisitState } from './state.ts';
import { visitMachine } from './visit-machine.ts';

interface Running {
  readonly fold: ComplaintFold;
  readonly pinned: PinnedTree;
  /** Walks the machine; it has no effects, so it is a fold like any other, without working out the start every time. */
  readonly actor: ActorRefFrom<typeof complaintMachine>;
}

/**
 * The state of a visit from its events. Pure: the same events and trees give the same state, in whatever order the
 * writers' files were read.
 *
 * @param trees  by content hash; a complaint whose tree is missing is listed under `ignored`.
 */
export function replay(events: readonly VisitEvent[], trees: ReadonlyMap<string, PinnedTree>): VisitState {
  let coach = '';
  let demo = false;
  let openedAt = '';
  let who: Role = 'owner-no-tools';
  let tools: readonly string[] | undefined;
  const layout = new Map<string, LayoutAnswer>();
  const notKnown = new Set<string>();
  const costs = new Map<keyof Costs, number>();
  const running = new Map<string, Running>();
  const ignored: IgnoredEvent[] = [];
  let plan = emptyPlan();
  let arrival = emptyArrival();
  let [visit] = initialTransition(visitMachine);
  let airTest = emptyAirTest();
  let road = emptyRoad();
  let inspection = emptyInspection();

  for (const event of effectiveEvents(events)) {
    const unused = ignored.length;
    airTest = foldAirTest(airTest, event);
    const notOnTheRoad = refusesRoad(road, event);
    if (notOnTheRoad !== null) ignored.push({ event, why: notOnTheRoad });
    road = foldRoad(road, event);
    inspection = foldInspection(inspection, event);
    arrival = foldArrival(arrival, event);
    switch (event.kind) {
      case 'visit.opened':
        ({ coach, demo } = event);
        openedAt = event.at;
        if (event.coachId !== undefined) arrival = { ...arrival, coachId: event.coachId };
        break;
      case 'person.set':
        who = event.who;
        tools = event.tools;
        break;
      case 'layout.set':
        if (event.value === null) {
          layout.delete(event.feature);
          notKnown.add(event.feature);
        } else {
          layout.set(event.feature, event.value);
          notKnown.delete(event.feature);
        }
        break;
      case 'cost.set':
        if (!isCost(event.cost)) ignored.push({ event, why: `"${event.cost}" is not a cost that this version knows.` });
        else if (event.minutes === null) costs.delete(event.cost);
        else costs.set(event.cost, event.minutes);
        break;
      case 'complaint.opened':
        open(event);
        break;
      case 'event.taken-back':
      case 'event.put-back':
        break;
      default:
        if (isPlanEvent(event)) {
          const why = refusesPlan(plan, event, unproven());
          if (why !== null) ignored.push({ event, why });
        } else if (isOfComplaint(event)) tell(event);
    }
    // What no complaint could use does not move the visit either.
    if (ignored.length > unused) continue;
    plan = foldPlan(plan, event);
    if (
      event.kind === 'complaint.opened' ||
      event.kind === 'complaint.closed' ||
      event.kind === 'complaint.reopened' ||
      event.kind === 'proof.recorded'
    ) {
      // Event name and event belong together by construction.
      [visit] = transition(visitMachine, visit, { type: event.kind, event } as Parameters<
        typeof transition<typeof visitMachine>
      >[2]);
    }
  }

  const undo = undoTarget(events);
  const redo = redoTarget(events);
  return {
    coach,
    demo,
    openedAt,
    phase: visit.value,
    who,
    ...(tools ? { tools } : {}),
    layout: Object.fromEntries(layout),
    layoutNotKnown: [...notKnown],
    costs: Object.fromEntries(costs),
    arrival,
    complaints: [...running.values()].map(({ fold, actor }) => fold.state(phaseOf(actor.getSnapshot().value))),
    plan,
    airTest,
    road,
    inspection,
    ignored,
    ...(undo ? { undo } : {}),
    ...(redo ? { redo } : {}),
  };

  /** Corrections of complaints without a proof that held. */
  function unproven(): string[] {
    return [...running.values()].flatMap(({ fold }) => unprovenCauses(fold.state('proving')));
  }

  function open(event: EventOf<'complaint.opened'>): void {
    const pinned = trees.get(event.treeHash);
    if (!pinned) {
      ignored.push({
        event,
        why: `The tree "${event.tree}" as it was then is not here. Its copy belongs into the visit's folder.`,
      });
      return;
    }
    if (running.has(event.complaint)) {
      ignored.push({ event, why: 'This complaint is open already.' });
      return;
    }
    const actor = createActor(complaintMachine, {
      input: {
        index: stopIndexOf(pinned.tree),
        resultsOf: (check, value) => recordedResults(pinned.tree, pinned.vocabulary, check, value),
      },
    }).start();
    const mine: Running = { fold: new ComplaintFold(event, pinned), pinned, actor };
    running.set(event.complaint, mine);
    hearOthers(mine);
  }

  /** What the visit's other complaints found before this one was there to hear it. */
  function hearOthers(mine: Running): void {
    for (const other of running.values()) {
      if (other === mine) continue;
      for (const shared of other.fold.sharedFindings(mine.pinned.tree, mine.fold.id)) {
        const news = mine.fold.newsOf(shared);
        if (news) step(mine, news, shared.from, shared.who);
      }
    }
  }

  function tell(event: ComplaintLogEvent): void {
    const mine = running.get(event.complaint);
    if (!mine) {
      ignored.push({ event, why: 'It belongs to a complaint that is not open in this visit.' });
      return;
    }
    const why = step(mine, event);
    if (why !== null) {
      ignored.push({ event, why });
      return;
    }
    if (event.kind === 'complaint.reopened') hearOthers(mine);
    if (event.kind !== 'finding.recorded' && event.kind !== 'finding.changed') return;
    for (const other of running.values()) {
      if (other === mine) continue;
      const translated = mine.fold.translated(event, other.pinned.tree, other.fold.id);
      if (translated) step(other, translated, mine.fold.id);
    }
  }

  /** Gives an event to a complaint; null when it was taken, else why not. */
  function step(mine: Running, event: ComplaintLogEvent, from?: string, by: Role = who): string | null {
    const why = mine.fold.refuses(event);
    if (why !== null) return why;
    const message = heard(event);
    const snapshot = mine.actor.getSnapshot();
    if (!ALWAYS.has(event.kind) && !snapshot.can(message)) {
      return `It does not fit where the complaint stood then (${phaseOf(snapshot.value)}).`;
    }
    mine.actor.send(message);
    mine.fold.take(event, { who: by, from });
    return null;
  }
}

/** Events that change what is known but not where the complaint stands. */
const ALWAYS: ReadonlySet<VisitEvent['kind']> = new Set(['note.added', 'photo.added', 'access.set', 'noticed.asked']);

function isOfComplaint(event: VisitEvent): event is ComplaintLogEvent {
  return 'complaint' in event;
}

function isCost(name: string): name is keyof Costs {
  return ['handOver', 'wrongPart', 'comeBack', 'tow', 'creep', 'missDanger', 'missDamage'].includes(name);
}

function phaseOf(value: SnapshotFrom<typeof complaintMachine>['value']): ComplaintPhase {
  return typeof value === 'string' ? value : `checking.${value.checking}`;
}
