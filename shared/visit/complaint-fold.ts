import type { Role, Tree } from '../knowledge/tree.ts';
import { closingCost, idsOf, maskOf, move, needOf, vocabularyGraph } from '../planning/index.ts';
import type { CorrectionDone, StopAnswer } from '../planning/situation.ts';
import type { ComplaintLogEvent } from './complaint-machine.ts';
import { EVENT_VERSION, type EventOf, type Reading } from './events.ts';
import type { PinnedTree } from './pinned-tree.ts';
import type { ComplaintPhase, ComplaintState, TrailFinding } from './state.ts';

/** A finding of one complaint as another one of the visit hears it, with who found it. */
export interface SharedFinding {
  readonly event: EventOf<'finding.recorded'>;
  readonly from: string;
  readonly who: Role;
}

/** Collects what the events of one complaint say beside where the machine stands. */
export class ComplaintFold {
  readonly id: string;
  readonly #opened: EventOf<'complaint.opened'>;
  readonly #pinned: PinnedTree;
  readonly #graph;
  readonly #stopAnswers: Record<string, StopAnswer> = {};
  #trail: TrailFinding[] = [];
  #notes: string[] = [];
  #photos: string[] = [];
  #open = 0;
  #check: string | undefined;
  #reading: Reading | undefined;
  #concluded: string | undefined;
  #corrections: ComplaintState['corrections'][number][] = [];
  #closedHow: ComplaintState['closedHow'];
  #noticedAsked = false;
  #minutes = 0;

  constructor(opened: EventOf<'complaint.opened'>, pinned: PinnedTree) {
    this.id = opened.complaint;
    this.#opened = opened;
    this.#pinned = pinned;
    this.#graph = vocabularyGraph(pinned.vocabulary.access);
  }

  /** Why an event cannot be used with this complaint's tree; null when it can. */
  refuses(event: ComplaintLogEvent): string | null {
    const { tree } = this.#pinned;
    switch (event.kind) {
      case 'stop.answered':
        return tree.stopRules.some(({ id }) => id === event.rule) ? null : `The tree has no stop rule "${event.rule}".`;
      case 'finding.recorded': {
        if (this.#trail.some(({ id }) => id === event.finding)) return 'This finding is recorded already.';
        return this.#refusesCheck(event.check);
      }
      case 'check.chosen':
      case 'reading.taken':
        return this.#refusesCheck(event.check);
      case 'finding.changed':
        return this.#trail.some(({ id }) => id === event.finding) ? null : 'The finding that it changes is not here.';
      case 'conclusion.accepted':
      case 'correction.started':
      case 'correction.done':
        return event.cause === 'unlisted' || tree.causes.some(({ id }) => id === event.cause)
          ? null
          : `The tree has no cause "${event.cause}".`;
      default:
        return null;
    }
  }

  #refusesCheck(check: string): string | null {
    return this.#pinned.tree.checks.some(({ id }) => id === check) ? null : `The tree has no check "${check}".`;
  }

  take(event: ComplaintLogEvent, { who, from }: { readonly who: Role; readonly from?: string | undefined }): void {
    switch (event.kind) {
      case 'stop.answered':
        this.#stopAnswers[event.rule] = event.answer;
        break;
      case 'noticed.asked':
        this.#noticedAsked = true;
        break;
      case 'check.chosen':
        this.#check = event.check;
        this.#reading = undefined;
        break;
      case 'check.put-back':
        this.#check = undefined;
        this.#reading = undefined;
        break;
      case 'reading.taken':
        this.#check = event.check;
        this.#reading = event.reading;
        break;
      case 'finding.recorded':
        this.#record(event, who, from);
        break;
      case 'finding.changed':
        this.#trail = this.#trail.map((each) =>
          each.id === event.finding
            ? { ...each, value: event.value, ...(event.site === undefined ? {} : { site: event.site }) }
            : each,
        );
        break;
      case 'note.added':
        if (event.finding === undefined) this.#notes = [...this.#notes, event.text];
        else
          this.#trail = this.#trail.map((each) =>
            each.id === event.finding ? { ...each, notes: [...each.notes, event.text] } : each,
          );
        break;
      case 'photo.added':
        if (event.finding === undefined) this.#photos = [...this.#photos, event.photo];
        else
          this.#trail = this.#trail.map((each) =>
            each.id === event.finding ? { ...each, photos: [...each.photos, event.photo] } : each,
          );
        break;
      case 'access.set':
        this.#open = maskOf(this.#graph, event.open);
        break;
      case 'conclusion.accepted':
      case 'correction.started':
        this.#concluded = event.cause;
        break;
      case 'checking.resumed':
        this.#concluded = undefined;
        break;
      case 'correction.done': {
        this.#concluded = event.cause;
        const before = this.#trail.map(({ id }) => id);
        this.#corrections = [
          ...this.#corrections,
          {
            cause: event.cause,
            partSeen: event.partSeen,
            proof: 'pending',
            findingsBefore: before,
            parts: event.parts,
            alsoRenewed: event.alsoRenewed,
            at: event.at,
            ...(event.note === undefined ? {} : { note: event.note }),
            ...(event.minutes === undefined ? {} : { minutes: event.minutes }),
          },
        ];
        this.#minutes += event.minutes ?? 0;
        break;
      }
      case 'proof.recorded': {
        this.#lastProof(event.outcome);
        if (event.outcome === 'gone') this.#closedHow = 'cured';
        else this.#concluded = undefined;
        break;
      }
      case 'complaint.closed':
        this.#closedHow = event.how;
        break;
      case 'complaint.reopened':
        this.#closedHow = undefined;
        this.#concluded = undefined;
        // It is back, so what seemed to prove the cure did not.
        if (this.#corrections.at(-1)?.proof === 'gone') this.#lastProof('still-there');
        break;
      default:
        break;
    }
  }

  #lastProof(proof: CorrectionDone['proof']): void {
    const last = this.#corrections.at(-1);
    if (last) this.#corrections = [...this.#corrections.slice(0, -1), { ...last, proof }];
  }

  #record(event: EventOf<'finding.recorded'>, who: Role, from: string | undefined): void {
    const check = this.#pinned.tree.checks.find(({ id }) => id === event.check)!;
    this.#check = undefined;
    this.#reading = undefined;
    let minutes = 0;
    if (from === undefined && event.value.kind !== 'cant-do') {
      const before = closingCost(this.#graph, this.#open);
      const there = move(this.#graph, this.#open, needOf(this.#graph, this.#pinned.vocabulary.access, check.access));
      this.#open = there.state;
      minutes =
        (event.minutes ?? check.minutes) + Math.max(0, there.cost + closingCost(this.#graph, there.state) - before);
      this.#minutes += minutes;
    }
    this.#trail = [
      ...this.#trail,
      {
        id: event.finding,
        check: event.check,
        value: event.value,
        notes: event.note === undefined ? [] : [event.note],
        photos: event.photos ?? [],
        at: event.at,
        by: event.by,
        who,
        minutes,
        ...(event.site === undefined ? {} : { site: event.site }),
        ...(from === undefined ? {} : { from }),
      },
    ];
  }

  /** A finding of this complaint as another tree hears it; null when that tree does not have the check. */
  translated(
    event: EventOf<'finding.recorded'> | EventOf<'finding.changed'>,
    other: Tree,
    complaint: string,
  ): ComplaintLogEvent | null {
    const checkId =
      event.kind === 'finding.recorded' ? event.check : this.#trail.find(({ id }) => id === event.finding)?.check;
    const sharedAs = this.#pinned.tree.checks.find(({ id }) => id === checkId)?.sharedAs;
    const twin = sharedAs === undefined ? undefined : other.checks.find((check) => check.sharedAs === sharedAs);
    if (!twin) return null;
    return event.kind === 'finding.recorded' ? { ...event, complaint, check: twin.id } : { ...event, complaint };
  }

  /** Findings made here so far, as a complaint that is opened or opened again now hears them. */
  sharedFindings(other: Tree, complaint: string): SharedFinding[] {
    return this.#trail.flatMap((finding) => {
      if (finding.from !== undefined) return [];
      const { id, check, value, site, at, by, who } = finding;
      const event: EventOf<'finding.recorded'> = {
        id: `${id}-shared`,
        v: EVENT_VERSION,
        at,
        by,
        kind: 'finding.recorded',
        complaint: this.id,
        finding: id,
        check,
        value,
        ...(site === undefined ? {} : { site }),
      };
      const translated = this.translated(event, other, complaint);
      return translated?.kind === 'finding.recorded' ? [{ event: translated, from: this.id, who }] : [];
    });
  }

  /** What of a shared finding is news here: all of it, its changed value, or nothing. */
  newsOf({ event }: SharedFinding): ComplaintLogEvent | null {
    const heard = this.#trail.find(({ id }) => id === event.finding);
    if (!heard) return event;
    if (JSON.stringify(heard.value) === JSON.stringify(event.value)) return null;
    const { id, v, at, by, complaint, finding, value, site } = event;
    return {
      ...{ id, v, at, by, complaint, finding, value, kind: 'finding.changed' },
      ...(site === undefined ? {} : { site }),
    };
  }

  state(phase: ComplaintPhase): ComplaintState {
    return {
      id: this.id,
      tree: this.#opened.tree,
      treeHash: this.#opened.treeHash,
      words: this.#opened.words,
      phase,
      ...(this.#check === undefined ? {} : { check: this.#check }),
      ...(this.#reading === undefined ? {} : { reading: this.#reading }),
      stopAnswers: { ...this.#stopAnswers },
      noticedAsked: this.#noticedAsked,
      trail: this.#trail,
      notes: this.#notes,
      photos: this.#photos,
      access: idsOf(this.#graph, this.#open),
      ...(this.#concluded === undefined ? {} : { concluded: this.#concluded }),
      corrections: this.#corrections,
      ...(this.#closedHow === undefined ? {} : { closedHow: this.#closedHow }),
      minutesSpent: this.#minutes,
    };
  }
}
