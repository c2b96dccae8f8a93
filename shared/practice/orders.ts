import { beliefModel } from '../inference/index.ts';
import type { Tree } from '../knowledge/tree.ts';
import { taughtWay, type Move, type WayOfWorking } from '../planning/evaluation/index.ts';
import { rankChecks, type Ranking } from '../planning/next-check.ts';
import type { Situation } from '../planning/situation.ts';
import { driveVerdict } from '../planning/verdict.ts';
import type { Choice } from './choices.ts';
import type { Exercise } from './exercise.ts';
import { beginSession, choose, dangerIn, practiceVerdict, type Session } from './session.ts';

/** Steps after which an order is broken off; no tree has so many checks and corrections. */
const MOST_STEPS = 400;

/** What the planner works out in a situation, the safety rules considered. */
export function rankingIn(situation: Situation): Ranking {
  return rankChecks(situation, driveVerdict(situation, beliefModel(situation.tree, situation.layout)));
}

/** What the planner would do next by a ranking. */
export function moveOf({ stop, actNow, problem }: Ranking): Move {
  if (stop.kind === 'check') return { kind: 'check', check: stop.option.check };
  return actNow.first.kind === 'correct'
    ? { kind: 'correct', cause: problem.causesOf[actNow.first.correction]!.id }
    : { kind: 'hand-over' };
}

/** The planner that asks the safety questions first and never drives a coach that has to stay. */
export function safePlanner(): WayOfWorking {
  return { name: 'planner', next: (situation) => moveOf(rankingIn(situation)) };
}

/** The instructor's order; checks that would drive are passed over while the coach has to stay. */
export function safeTaught(): WayOfWorking {
  const taught = taughtWay();
  return {
    name: taught.name,
    next(situation) {
      const { verdict, fired } = driveVerdict(situation, beliefModel(situation.tree, situation.layout));
      const held = verdict === 'stay-put' || fired.some((each) => each.verdict !== 'drive-and-book');
      return taught.next(held ? { ...situation, tree: standingTree(situation) } : situation);
    },
  };
}

const standing = new WeakMap<Tree, Tree>();

/** The tree with the taught steps that can be done without driving. */
function standingTree({ tree, vocabulary }: Situation): Tree {
  const known = standing.get(tree);
  if (known) return known;
  const moves = new Set(vocabulary.access.flatMap((state) => (state.moves ? [state.id] : [])));
  const drives = new Set(tree.checks.flatMap(({ id, access }) => (moves.has(access) ? [id] : [])));
  const made = { ...tree, teaching: tree.teaching.filter(({ check }) => !drives.has(check)) };
  standing.set(tree, made);
  return made;
}

/**
 * Works an exercise in a fixed way to its end, safety questions first, every correction followed by its proof; where the proof
 * would have to drive a coach that must not, the job is handed over.
 */
export function workThrough(exercise: Exercise, way: WayOfWorking): Session {
  let session = beginSession(exercise);
  for (
    let open = practiceVerdict(session).openQuestions;
    open.length > 0;
    open = practiceVerdict(session).openQuestions
  )
    session = choose(session, { kind: 'question.asked', rule: open[0]! });
  for (let i = 0; i < MOST_STEPS && !session.end; i++) {
    const proof: Choice = { kind: 'proof.made' };
    session =
      session.corrected === null
        ? choose(session, choiceOf(way.next(session.situation)))
        : choose(session, dangerIn(session, proof) === null ? proof : { kind: 'handed-over' });
  }
  return session;
}

/** A step of a way of working as a choice. */
export function choiceOf(move: Move): Choice {
  switch (move.kind) {
    case 'check':
      return { kind: 'check.made', check: move.check, way: 'properly' };
    case 'correct':
      return { kind: 'correction.made', cause: move.cause, way: 'properly' };
    case 'hand-over':
      return { kind: 'handed-over' };
  }
}
