import { createActor } from 'xstate';
import { getShortestPaths, getSimplePaths } from 'xstate/graph';
import { describe, expect, it } from 'vitest';
import { ROLES, type Tree, type Vocabulary } from '../../../../shared/knowledge/index.ts';
import { compileTree, eventOf, stateName, toMachine, type CompiledTree } from '../../../../shared/planning/index.ts';
import { seededRandom } from '../../../../shared/planning/evaluation/index.ts';
import { blank, throughTheProgram, walkPaper } from './walked.ts';
import { shippedTrees } from '../../../shipped-trees.ts';

const loaded = await shippedTrees();
if (!loaded.vocabulary) throw new Error('The shipped vocabulary cannot be read.');
const vocabulary: Vocabulary = loaded.vocabulary;
/** Every tree for every role. */
const CASES = [...loaded.trees.values()]
  .flatMap(({ value }) => value ?? [])
  .flatMap((tree) => ROLES.map((who) => ({ tree, who, name: tree.id })));

/** Shallow enough for all of them in a test: a branch is followed down to fifteen coaches in a hundred; print.test.ts goes deeper. */
const THRESHOLD = 0.15;
const made = new Map<string, CompiledTree>();
function compiledFor(tree: Tree, who: (typeof ROLES)[number]): CompiledTree {
  const key = `${tree.id} ${who}`;
  const known = made.get(key) ?? compileTree(blank(tree, vocabulary, who), { threshold: THRESHOLD });
  made.set(key, known);
  return known;
}
/** The machine is flat: its state is one name. */
function nameOf(value: unknown): string {
  if (typeof value !== 'string') throw new Error('A state of the compiled tree has states inside.');
  return value;
}

/** Paths a tree and role. */
const PATHS = 2;

describe.each(CASES)('$name on paper for $who', ({ tree, who }) => {
  it('[PLA-27] along random paths the program advises the same next step, with the same verdict and belief', () => {
    const random = seededRandom(20251127);
    let checked = 0;
    const compiled = compiledFor(tree, who);
    // A path may end at a stop rule before any check; more are walked until enough checks were compared.
    for (let i = 0; i < PATHS || (checked < PATHS && i < 20 * PATHS); i++) {
      const { steps, path, leaf } = walkPaper(compiled, random);
      const skipped = new Set<string>();
      steps.forEach(({ ask, drive }, at) => {
        const { advice, nextCheck, verdict } = throughTheProgram(tree, vocabulary, who, path.slice(0, at));
        expect(verdict.verdict).toBe(drive.verdict);
        if (advice.kind === 'triage') expect(ask).toMatchObject({ kind: 'triage', rule: advice.rule });
        else if (advice.kind === 'layout' && !skipped.has(advice.feature))
          expect(ask).toMatchObject({ kind: 'layout', feature: advice.feature });
        else {
          // The screen passes over a layout question that nobody could answer, and offers the best check.
          const passed = advice.kind === 'layout' && skipped.has(advice.feature);
          expect(advice.kind === 'check' || passed).toBe(true);
          expect(ask).toMatchObject({ kind: 'check', check: nextCheck!.option.check });
          checked += 1;
        }
        if (ask.kind === 'layout' && path[at]!.answer.kind === 'layout-unknown') skipped.add(ask.feature);
      });
      const program = throughTheProgram(tree, vocabulary, who, path);
      expect(program.verdict.verdict).toBe(leaf.drive.verdict);
      expect(program.leading.cause).toBe(leaf.cause.cause);
      expect(program.leading.probability).toBeCloseTo(leaf.cause.probability, 9);
      if (leaf.end === 'continue' && leaf.nextTest.kind === 'check')
        expect(program.nextCheck?.option.check).toBe(leaf.nextTest.check);
      if (leaf.end === 'conclude' || leaf.end === 'hand-over')
        expect(program.advice.kind === leaf.end || program.advice.kind === 'layout').toBe(true);
    }
    expect(checked).toBeGreaterThanOrEqual(PATHS);
  });

  it('[PLA-20] no end of a path and no step sends a coach on the road that has to stay', () => {
    const moving = new Set(vocabulary.access.filter(({ moves }) => moves).map(({ id }) => id));
    const onTheRoad = new Set(tree.checks.filter(({ access }) => moving.has(access)).map(({ id }) => id));
    const held = compiledFor(tree, who).nodes.filter(({ drive }) => drive.halts || drive.verdict === 'stay-put');
    expect(held.length).toBeGreaterThan(0);
    for (const node of held) {
      const next = node.kind === 'step' ? node.ask : node.nextTest;
      expect(next.kind === 'check' && onTheRoad.has(next.check)).toBe(false);
    }
  });

  it('[PLA-22] the leaves are 1 together, within 1e-12', () => {
    const { nodes, cutOff } = compiledFor(tree, who);
    const sum = nodes.reduce((total, node) => (node.kind === 'leaf' ? total + node.reach : total), 0);
    expect(Math.abs(sum - 1)).toBeLessThan(1e-12);
    expect(cutOff).toBeGreaterThan(0);
    expect(cutOff).toBeLessThanOrEqual(1 + 1e-12);
  });

  it('[PLA-28] as an XState machine: every state is reached, every path ends in a state that says the three', () => {
    const compiled = compiledFor(tree, who);
    const machine = toMachine(compiled);
    const reached = new Map(getShortestPaths(machine).map((path) => [nameOf(path.state.value), path.state]));
    expect(reached.size).toBe(compiled.nodes.length);
    const ends = getSimplePaths(machine).filter(({ state }) => state.status === 'done');
    expect(ends.length).toBeGreaterThanOrEqual(compiled.nodes.filter(({ kind }) => kind === 'leaf').length);
    for (const { state } of ends) {
      const leaf = Object.values(state.getMeta()).flatMap((said) => (said && 'leaf' in said ? [said.leaf] : []))[0];
      expect(leaf?.cause.name).toBeTruthy();
      expect(leaf?.nextTest.kind).toMatch(/check|proof|look-further/);
      expect(leaf?.caution).toBeTruthy();
      expect(leaf?.drive.verdict).toMatch(/stay-put|creep-to-safe-place|drive-and-book/);
    }
    for (const [name, state] of reached)
      expect(state.status).toBe(
        compiled.nodes.find(({ number }) => stateName(number) === name)!.kind === 'leaf' ? 'done' : 'active',
      );
  });
});

describe('[PLA-28] the machine run as an actor', () => {
  it('takes the answers of a path on paper and stops where the paper does', () => {
    const compiled = compiledFor(CASES[0]!.tree, CASES[0]!.who);
    const random = seededRandom(7);
    for (let i = 0; i < 20; i++) {
      const { path, leaf } = walkPaper(compiled, random);
      const actor = createActor(toMachine(compiled)).start();
      for (const { answer } of path) {
        expect(actor.getSnapshot().can({ type: eventOf(answer) })).toBe(true);
        actor.send({ type: eventOf(answer) });
      }
      expect(actor.getSnapshot().status).toBe('done');
      expect(actor.getSnapshot().value).toBe(stateName(leaf.number));
    }
  });
});
