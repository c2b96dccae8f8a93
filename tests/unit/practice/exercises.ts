import { shippedTrees } from '../../shipped-trees.ts';
import { drawExercise, usualLayout, type Exercise, type PracticeTree } from '../../../shared/practice/index.ts';

/** A tree that comes with the program, as practice knows it; the hash stands for its content. */
export async function practiceTree(id: string): Promise<PracticeTree> {
  const { trees, vocabulary } = await shippedTrees(id);
  const tree = trees.get(id)?.value;
  if (!tree || !vocabulary) throw new Error(`${id} cannot be read.`);
  return { tree, vocabulary, hash: 'c0'.repeat(32) };
}

/** An exercise on the usual coach, from anything in the tree. */
export function anyExercise(pinned: PracticeTree, seed: number): Exercise {
  return drawExercise(pinned, { level: 'any', seed, layout: usualLayout(pinned.tree, pinned.vocabulary) });
}

/** The same exercise with another fault behind the same results and answers. */
export function withHidden(exercise: Exercise, cause: string): Exercise {
  return { ...exercise, cause };
}

/** The same exercise whose owner answers every safety question with no. */
export function allQuiet(exercise: Exercise): Exercise {
  return { ...exercise, answer: () => 'no' };
}
