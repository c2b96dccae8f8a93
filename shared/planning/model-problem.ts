import { accessGraph, type AccessNeed, type AccessNode } from './access.ts';
import type { FarState, FarTables } from './ahead/far-tables.ts';
import type { CheckAction, CorrectionAction, DecisionAction, Problem } from './problem.ts';
import { repairPlan } from './repair-plan.ts';

/** A small complete troubleshooting model: everything given as tables, outcomes independent given the cause. */
export interface TableModel {
  readonly causes: readonly { readonly id: string; readonly prior: number }[];
  readonly access: readonly AccessNode[];
  readonly checks: readonly (Needs & {
    readonly id: string;
    readonly cost: number;
    readonly outcomes: readonly string[];
    readonly likelihood: Readonly<Record<string, Readonly<Record<string, number>>>>;
  })[];
  readonly repairs: readonly (Needs & {
    readonly id: string;
    readonly cost: number;
    readonly fixes: Readonly<Record<string, number>>;
  })[];
  readonly verify: Needs & { readonly cost: number };
  readonly decisions: readonly { readonly id: string; readonly loss: number | Readonly<Record<string, number>> }[];
  readonly closeAtEnd: boolean;
}

interface Needs {
  readonly requiresOpen?: readonly string[];
  readonly requiresClosed?: readonly string[];
}

/** Answers so far: outcome index a check, −1 = not made. Failed corrections change the belief, so they are part of it. */
export interface TableKnowledge {
  readonly answers: readonly number[];
  readonly failed: number;
}

export interface TableProblem extends Problem<TableKnowledge> {
  readonly start: TableKnowledge;
  /** The same checks as the solvers that look ahead take them. */
  readonly tables: FarTables;
}

/** A state of a model as the solvers that look ahead take it. */
export function farState(problem: TableProblem, state: TableKnowledge & { readonly access: number }): FarState {
  return {
    belief: problem.belief(state),
    answers: String.fromCharCode(...state.answers.map((outcome) => (outcome < 0 ? 0 : outcome + 2))),
    leaders: [],
    access: state.access,
    failed: state.failed,
  };
}

/** The model as a problem. Priors are normalised. */
export function tableProblem(model: TableModel): TableProblem {
  const access = accessGraph(model.access);
  const need = (needs: Needs): AccessNeed => ({
    open: (needs.requiresOpen ?? []).reduce((mask, id) => mask | access.chain[access.ids.indexOf(id)]!, 0),
    closed: (needs.requiresClosed ?? []).reduce((mask, id) => mask | access.subtree[access.ids.indexOf(id)]!, 0),
  });
  const total = model.causes.reduce((sum, { prior }) => sum + prior, 0);
  const prior = Float64Array.from(model.causes, (cause) => cause.prior / total);
  const tables = model.checks.map((check) =>
    check.outcomes.map((outcome) => Float64Array.from(model.causes, ({ id }) => check.likelihood[id]![outcome]!)),
  );
  const checks = model.checks.map((check): CheckAction => ({ id: check.id, cost: check.cost, need: need(check) }));
  const corrections = model.repairs.map((repair): CorrectionAction => ({
    id: repair.id,
    cost: repair.cost,
    need: need(repair),
    cures: model.causes.flatMap(({ id }, cause) => (repair.fixes[id] ? [{ cause, share: repair.fixes[id] }] : [])),
  }));
  const decisions = model.decisions.map(({ id, loss }): DecisionAction => ({
    id,
    loss: Float64Array.from(model.causes, (cause) => (typeof loss === 'number' ? loss : loss[cause.id]!)),
  }));
  const parts = {
    access,
    corrections,
    decisions,
    verify: { cost: model.verify.cost, need: need(model.verify), again: 0 },
    closeAtEnd: model.closeAtEnd,
    wrongPart: 0,
  };

  const belief = ({ answers, failed }: TableKnowledge): Float64Array => {
    const weight = Float64Array.from(prior);
    answers.forEach((outcome, k) => {
      if (outcome >= 0) for (let c = 0; c < weight.length; c++) weight[c]! *= tables[k]![outcome]![c]!;
    });
    corrections.forEach(({ cures }, r) => {
      if (failed & (1 << r)) for (const { cause, share } of cures) weight[cause]! *= 1 - share;
    });
    return normalised(weight);
  };
  return {
    ...parts,
    causes: prior.length,
    checks,
    start: { answers: checks.map(() => -1), failed: 0 },
    tables: {
      rows: tables,
      roots: [],
      group: checks.map(() => -1),
      sharpness: checks.map(() => 0),
      cost: checks.map(({ cost }) => cost),
      need: checks.map(({ need }) => need),
      requires: checks.map(() => []),
      usable: checks.map(() => true),
    },
    belief,
    openChecks: ({ answers }) => answers.flatMap((outcome, k) => (outcome < 0 ? [k] : [])),
    outlook(knowledge, check) {
      const now = belief(knowledge);
      const after = tables[check]!.map((row) => now.map((p, c) => p * row[c]!));
      const share = after.map((weight) => weight.reduce((sum, each) => sum + each, 0));
      return { share, after: after.map(normalised) };
    },
    learn: ({ answers, failed }, check, result) => ({
      failed,
      answers: answers.map((old, k) => (k === check ? result : old)),
    }),
    actNow: (now, stage) => repairPlan(parts, now, stage),
  };
}

function normalised(weight: Float64Array): Float64Array {
  const total = weight.reduce((sum, each) => sum + each, 0);
  return total > 0 ? weight.map((each) => each / total) : weight;
}
