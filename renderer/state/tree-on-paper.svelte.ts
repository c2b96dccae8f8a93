import { untrack } from 'svelte';
import type { Role } from '../../shared/knowledge/index.ts';
import { defaultCosts, PRINT_THRESHOLD, type CompiledTree, type Situation } from '../../shared/planning/index.ts';
import { compileAway } from '../workers/compile-away.ts';

/** Where the drawn tree starts: with the complaint, or with what is known now. */
export type Start = 'complaint' | 'now';

/** The drawn tree as the person asked for it, for the screen and for the printed page. One is drawn up at a time. */
export class TreeOnPaper {
  /** Null = whoever works on the visit. */
  who = $state<Role | null>(null);
  threshold = $state(PRINT_THRESHOLD);
  start = $state<Start>('complaint');

  compiled = $state.raw<CompiledTree | null>(null);
  /** What the tree was drawn up from. */
  from = $state.raw<Situation | null>(null);
  /** How far it is, in words; empty when nothing is under way. */
  progress = $state('');
  fault = $state<string | null>(null);

  #key = '';
  #end: (() => void) | null = null;

  /** Draws up the tree for a situation, unless that is what is there or under way already. */
  ask(situation: Situation, hash: string): void {
    const from = startingFrom(situation, this.who ?? situation.who, this.start);
    const { findings, stopAnswers } = situation;
    const walked = this.start === 'complaint' ? { findings, stopAnswers } : undefined;
    // Tree and vocabulary are known by their hash; starting odds can differ from the file's.
    const { who, tools, layout, layoutNotKnown, access, costs, corrections, tree } = from;
    const odds = tree.causes.map(({ weight }) => weight);
    const coach = [
      who,
      tools,
      layout,
      layoutNotKnown,
      access,
      costs,
      corrections,
      from.findings,
      from.stopAnswers,
      from.hold,
    ];
    const key = JSON.stringify([hash, this.threshold, walked, coach, odds]);
    untrack(() => {
      if (key === this.#key) return;
      this.#key = key;
      this.#end?.();
      this.compiled = null;
      this.fault = null;
      this.progress = 'Drawing up the tree. The first steps are being worked out.';
      this.#end = compileAway({ situation: from, threshold: this.threshold, ...(walked ? { walked } : {}) }, (news) => {
        if (news.kind === 'progress') {
          this.progress = `Drawing up the tree: ${news.made} steps worked out, ${news.waiting} waiting.`;
          return;
        }
        this.progress = '';
        if (news.kind === 'failed') {
          this.#key = '';
          this.fault = `The tree cannot be drawn (${news.message}). What was recorded is on disk. Go back to the work and open this page again.`;
          return;
        }
        this.from = from;
        this.compiled = news.compiled;
      });
    });
  }
}

/** A situation as somebody in that role would begin it: the coach is known, nothing is found; or as it stands now. */
function startingFrom(situation: Situation, who: Role, start: Start): Situation {
  const { tools, hold, ...rest } = situation;
  const person = {
    ...rest,
    who,
    // Another role brings its own tools and costs.
    ...(who === situation.who ? { ...(tools ? { tools } : {}) } : { costs: defaultCosts(who) }),
  };
  return start === 'now'
    ? { ...person, ...(hold ? { hold } : {}) }
    : { ...person, findings: [], stopAnswers: {}, corrections: [], access: [] };
}
