/**
 * Thirteen complete troubleshooting models with optimal cost and the cost of simple policies.
 *
 * m2: Jensen & Nielsen, Bayesian Networks and Decision Graphs, 2nd ed. 2007 (exercise). m8: Raiffa, Decision Analysis,
 * 1968, as restated by Shenoy, Operations Research 40, 1992. m9: used-car exercise of Pearl and of Russell & Norvig. The
 * others were made up for testing. Expected values: two independent exhaustive solvers in Python, one in floating point
 * and one in rational arithmetic, which agree to 1e-9.
 */
import { readdirSync, readFileSync } from 'node:fs';
import type { FlowStep } from '../../shared/planning/evaluation/model-ways.ts';
import type { TableModel } from '../../shared/planning/model-problem.ts';

interface Named {
  readonly id: string;
  readonly parent?: string;
}

interface ModelFile {
  readonly id: string;
  readonly causes: TableModel['causes'];
  readonly access?: readonly (Named & { readonly openCost: number; readonly closeCost: number })[];
  readonly checks?: TableModel['checks'];
  readonly repairs?: TableModel['repairs'];
  readonly verify?: TableModel['verify'];
  readonly decisions?: TableModel['decisions'];
  readonly closeAtEnd?: boolean;
  readonly flowchart?: readonly FlowStep[];
  readonly expected: {
    readonly optimalCost: number;
    readonly firstAction: string;
    readonly gapToSecond: number;
    readonly policies: Readonly<Record<string, { readonly cost: number; readonly wrongParts?: number } | undefined>>;
  };
}

const folder = new URL('../../shared/planning/evaluation/models/', import.meta.url);

export const MODELS = readdirSync(folder)
  .sort()
  .map((name) => {
    // The files are ours; the schema is stated in ModelFile and every field used below is read by a test.
    const file = JSON.parse(readFileSync(new URL(name, folder), 'utf8')) as ModelFile;
    const model: TableModel = {
      causes: file.causes,
      access: file.access ?? [],
      checks: file.checks ?? [],
      repairs: file.repairs ?? [],
      verify: file.verify ?? { cost: 0 },
      decisions: file.decisions ?? [],
      closeAtEnd: file.closeAtEnd ?? true,
    };
    return { id: file.id, model, expected: file.expected, flowchart: file.flowchart };
  });
