import { beliefModel } from '../inference/index.ts';
import type { Layout } from '../knowledge/layout.ts';
import { UNLISTED, type StopRule, type Tree } from '../knowledge/tree.ts';
import type { Vocabulary } from '../knowledge/vocabulary.ts';
import type { SimulatedCoach } from '../planning/evaluation/index.ts';
import { drawFor, evenly } from './draw.ts';
import { hiddenOdds } from './levels.ts';
import { codeOf, type PracticeTree, type Setting } from './setting.ts';

/**
 * A simulated coach to practise on. `cause` is hidden until the end: whatever is shown before may rest on `words`, `layout`,
 * `look` and `answer` alone.
 */
export interface Exercise {
  readonly tree: Tree;
  readonly vocabulary: Vocabulary;
  readonly layout: Layout;
  /** Short code, or the title of an instructor's file. */
  readonly name: string;
  /** What the owner says. */
  readonly words: string;
  /** Hidden. Cause id, or `unlisted`. */
  readonly cause: string;
  /** Result id of a check the nth time it is made, from 0; the same every time unless the tree says that it varies. */
  look(check: string, nth: number): string;
  /** What the owner says to the question of a stop rule. */
  answer(rule: string): 'yes' | 'no';
}

/** What an exercise of an instructor's file lays down instead of drawing it. */
export interface Forced {
  readonly words?: string;
  /** One of these is drawn, all as likely. */
  readonly causes?: readonly string[];
  /** Check → result. */
  readonly results?: Readonly<Record<string, string>>;
  /** Stop rule → answer. */
  readonly answers?: Readonly<Record<string, 'yes' | 'no'>>;
}

/**
 * Share of owners who say yes to a safety question: when the rule guards over the hidden cause and no check would answer it,
 * and when it guards over others. Judgement; the tree has no odds for its questions.
 */
const YES_WHEN_COVERED = 0.5;
const YES_OTHERWISE = 0.01;

/** The exercise of a setting. Layout first, then the fault among those that can exist on it: the layout tells nothing of it. */
export function drawExercise(pinned: PracticeTree, setting: Setting): Exercise {
  const code = codeOf(pinned, setting);
  const { causeIds, odds } = hiddenOdds(pinned.tree, setting.layout, setting.level);
  const cause = causeIds[drawFor(code, 'cause', odds)]!;
  return exerciseWith(pinned, { seed: code, name: code, layout: setting.layout, cause, forced: {} });
}

/** An exercise whose fault is known to whoever makes it. */
export function exerciseWith(
  { tree, vocabulary }: Pick<PracticeTree, 'tree' | 'vocabulary'>,
  made: {
    readonly seed: string;
    readonly name: string;
    readonly layout: Layout;
    readonly cause: string;
    readonly forced: Forced;
  },
): Exercise {
  const { seed, name, layout, cause, forced } = made;
  const truth = beliefModel(tree, layout, { floor: 0 });
  // An instructor may hide a cause in a coach that is not built for it; then the whole tree says what would be found.
  const model = truth.causeIds.includes(cause) ? truth : beliefModel(tree, {}, { floor: 0 });
  const column = model.causeIds.indexOf(cause);
  const drawn = new Map<string, string>();
  const look = (check: string, nth: number): string => {
    const set = forced.results?.[check];
    if (set !== undefined) return set;
    const table = model.tables.get(check)!;
    const purpose = table.check.varies !== undefined && nth > 0 ? `check ${check} ${nth}` : `check ${check}`;
    const known = drawn.get(purpose);
    if (known !== undefined) return known;
    const shares = table.likelihood.map((row) => row[column]!);
    const result = table.check.results[drawFor(seed, purpose, shares)]!.id;
    drawn.set(purpose, result);
    return result;
  };
  return {
    tree,
    vocabulary,
    layout,
    name,
    cause,
    words: forced.words ?? tree.phrases[drawFor(seed, 'words', evenly(tree.phrases.length))]!,
    look,
    answer: (id) => {
      const set = forced.answers?.[id];
      if (set !== undefined) return set;
      const rule = tree.stopRules.find((each) => each.id === id)!;
      return drawnYes(rule, cause, seed, look) ? 'yes' : 'no';
    },
  };
}

/**
 * An owner's answer is drawn like a result. Where the rule guards over the fault and a check would answer the question, it is
 * answered as that check comes out; a check that would show the same by chance does not make owners say yes.
 */
function drawnYes(rule: StopRule, cause: string, seed: string, look: Exercise['look']): boolean {
  const covered = cause !== UNLISTED && rule.covers.includes(cause);
  if (covered && rule.firedBy.length > 0)
    return rule.firedBy.some(({ check, results }) => results.includes(look(check, 0)));
  const yes = covered ? YES_WHEN_COVERED : YES_OTHERWISE;
  return drawFor(seed, `question ${rule.id}`, [yes, 1 - yes]) === 0;
}

/** The same coach for the evaluation of the planner. */
export function coachOf(exercise: Exercise): SimulatedCoach {
  return { cause: exercise.cause, layout: exercise.layout, look: (check) => exercise.look(check, 0) };
}
