import { checkBodyOf } from './check-body.ts';
import { checkShape } from './check-shape.ts';
import { likelihoodRows } from './likelihood-rows.ts';
import { nearestText } from './names.ts';
import { inFileOrder, type ReadResult } from './problem.ts';
import { treeFile, type TreeFile } from './schema.ts';
import { SourceFile, type Path } from './source-file.ts';
import type { Cause, Check, Picture, Prerequisite, Tree } from './tree.ts';
import type { Vocabulary } from './vocabulary.ts';

/** A tree together with its file, for rules that want to name a line. */
export interface ReadTree extends ReadResult<Tree> {
  readonly source: SourceFile;
}

/**
 * Reads one tree.
 *
 * @param input.file  path for messages.
 * @returns the tree with shared checks filled in; `value` is null when there is any error, and then `problems` holds all
 *   of them, each with line and column.
 */
export function readTree(input: {
  readonly treeYaml: string;
  readonly file: string;
  readonly vocabulary: Vocabulary;
}): ReadTree {
  const source = new SourceFile(input.file, input.treeYaml);
  const data = source.data();
  if (data === null)
    source.error(
      'empty-file',
      [],
      'The file is empty. Begin with "format: droplight-tree/1"; README.md of the trees shows the smallest tree.',
    );
  const written = data === undefined || data === null ? null : checkShape(source, treeFile, data);
  const tree = written ? buildTree(written, source, input.vocabulary) : null;
  const problems = inFileOrder(source.problems);
  return { source, problems, value: problems.some((problem) => problem.level === 'error') ? null : tree };
}

function buildTree(written: TreeFile, file: SourceFile, vocabulary: Vocabulary): Tree {
  const causeIds = uniqueIds(file, 'causes', written.causes);
  const checkIds = uniqueIds(file, 'checks', written.checks);
  uniqueIds(file, 'stopRules', written.stopRules);
  if (causeIds.has('unlisted'))
    file.error('reserved-id', ['causes'], '"unlisted" is in every tree by itself. Give this cause another id.');

  const knowCause = (id: string, path: Path): void => {
    if (!causeIds.has(id)) file.error('unknown-cause', path, `"${id}" is not declared.${nearestText(id, causeIds)}`);
  };
  const features = new Map(vocabulary.layout.map((feature) => [feature.id, feature]));
  const knowWhen = (when: Readonly<Record<string, readonly unknown[]>>, path: Path): void => {
    for (const [feature, values] of Object.entries(when)) {
      const known = features.get(feature);
      if (!known) {
        file.error(
          'unknown-feature',
          [...path, feature],
          `"${feature}" is not a layout feature.${nearestText(feature, features.keys())}`,
        );
        continue;
      }
      const allowed = known.values.map(({ value }) => value);
      values.forEach((value, i) => {
        if (!allowed.some((each) => each === value))
          file.error(
            'unknown-feature-value',
            [...path, feature, i],
            `"${String(value)}" is not a value of "${feature}". Allowed: ${allowed.join(', ')}.`,
          );
      });
    }
  };
  const states = vocabulary.access;
  const knowAccess = (id: string, path: Path): void => {
    if (!states.some((state) => state.id === id))
      file.error(
        'unknown-access',
        path,
        `"${id}" is not an access state.${nearestText(
          id,
          states.map((state) => state.id),
        )}`,
      );
  };

  knowWhen(written.when, ['when']);
  const causes = written.causes.map((each, i): Cause => {
    knowWhen(each.when, ['causes', i, 'when']);
    each.weightIf?.forEach((other, k) => {
      const path: Path = ['causes', i, 'weightIf', k, 'when'];
      knowWhen(other.when, path);
      if (Object.keys(other.when).length === 0)
        file.error(
          'empty-when',
          path,
          'A second weight needs a feature that it hangs on. Name one, or write one weight.',
        );
    });
    const { weightIf, ...rest } = each;
    const { access, hours, ...correction } = each.correction;
    if (access !== undefined) knowAccess(access, ['causes', i, 'correction', 'access']);
    if (hours[0] > hours[1])
      file.error(
        'empty-range',
        ['causes', i, 'correction', 'hours'],
        `Hours run from ${hours[0]} to ${hours[1]}. Write the lower figure first.`,
      );
    return {
      ...rest,
      ...(weightIf === undefined ? {} : { weightIf }),
      correction: { ...correction, hours, ...(access === undefined ? {} : { access }) },
    };
  });

  const pictures = new Map<string, Picture[]>();
  written.pictures.forEach(({ check, ...picture }, i) => {
    if (!checkIds.has(check))
      file.error(
        'unknown-check',
        ['pictures', i, 'check'],
        `"${check}" is not declared.${nearestText(check, checkIds)}`,
      );
    pictures.set(check, [...(pictures.get(check) ?? []), picture]);
  });

  const checks = written.checks.map((each, i): Check => {
    const path: Path = ['checks', i];
    const context = {
      file,
      path,
      states,
      instruments: [...vocabulary.instruments.values()],
      limits: [...vocabulary.limits.values()],
    };
    knowWhen(each.when, [...path, 'when']);
    each.settles.forEach((cause, k) => knowCause(cause, [...path, 'settles', k]));
    const { likelihood, group, requires, settles, when, appliesTo, ...rest } = each;
    const inTree = {
      requires,
      settles,
      when,
      appliesTo,
      pictures: pictures.get(each.id) ?? [],
      ...(group === undefined ? {} : { group }),
    };
    if ('shared' in rest) {
      const body = vocabulary.checks.get(rest.shared);
      if (!body) {
        file.error(
          'unknown-shared-check',
          [...path, 'shared'],
          `"${rest.shared}" is not declared in checks.yaml.${nearestText(rest.shared, vocabulary.checks.keys())}`,
        );
        return { ...EMPTY_BODY, ...inTree, id: each.id, likelihood: [] };
      }
      return {
        ...body,
        ...inTree,
        id: each.id,
        sharedAs: rest.shared,
        likelihood: likelihoodRows(likelihood, { file, path, causeIds, results: body.results, check: each.id }),
      };
    }
    const body = checkBodyOf(rest, context);
    return {
      ...body,
      ...inTree,
      likelihood: likelihoodRows(likelihood, { file, path, causeIds, results: body.results, check: each.id }),
    };
  });

  const byId = new Map(checks.map((check) => [check.id, check]));
  const knowResults = (entries: readonly Prerequisite[], path: Path): void => {
    entries.forEach((entry, k) => {
      const check = byId.get(entry.check);
      if (!check) {
        file.error(
          'unknown-check',
          [...path, k, 'check'],
          `"${entry.check}" is not declared.${nearestText(entry.check, checkIds)}`,
        );
        return;
      }
      entry.results.forEach((result, m) => {
        const ids = check.results.map(({ id }) => id);
        if (!ids.includes(result))
          file.error(
            'unknown-result',
            [...path, k, 'results', m],
            `"${result}" is not a result of "${check.id}". Allowed: ${ids.join(', ')}.${nearestText(result, ids)}`,
          );
      });
    });
  };
  written.checks.forEach((each, i) => knowResults(each.requires, ['checks', i, 'requires']));
  written.stopRules.forEach((rule, i) => {
    rule.covers.forEach((cause, k) => knowCause(cause, ['stopRules', i, 'covers', k]));
    knowResults(rule.firedBy, ['stopRules', i, 'firedBy']);
  });
  written.leadsTo.forEach((door, i) => {
    knowResults(door.firedBy, ['leadsTo', i, 'firedBy']);
    if (door.complaint === written.id)
      file.error(
        'door-to-itself',
        ['leadsTo', i, 'complaint'],
        'A tree cannot lead to itself. Name another complaint.',
      );
  });
  written.teaching.forEach((step, i) => {
    if (!checkIds.has(step.check))
      file.error(
        'unknown-check',
        ['teaching', i, 'check'],
        `"${step.check}" is not declared.${nearestText(step.check, checkIds)}`,
      );
  });
  written.proofs.forEach((proof, i) => {
    if (proof.after !== '*') knowCause(proof.after, ['proofs', i, 'after']);
    knowAccess(proof.access, ['proofs', i, 'access']);
  });
  written.pictures.forEach((picture, i) => {
    const check = byId.get(picture.check);
    picture.results.forEach((result, k) => {
      if (check && !check.results.some(({ id }) => id === result))
        file.error(
          'unknown-result',
          ['pictures', i, 'results', k],
          `"${result}" is not a result of "${check.id}". Allowed: ${check.results.map(({ id }) => id).join(', ')}.`,
        );
    });
  });

  return {
    id: written.id,
    version: written.version,
    title: written.title,
    phrases: written.phrases,
    when: written.when,
    confusedWith: written.confusedWith.map(({ text, complaint }) => ({
      text,
      ...(complaint === undefined ? {} : { complaint }),
    })),
    boundary: written.boundary,
    unlistedShare: written.unlisted,
    causes,
    checks,
    teaching: written.teaching,
    stopRules: written.stopRules,
    proofs: written.proofs,
    leadsTo: written.leadsTo,
    wrongDiagnoses: written.wrongDiagnoses,
    exceptions: written.exceptions,
  };
}

/** Stands in for a shared check that does not exist, so that the rest of the file can still be checked. */
const EMPTY_BODY = {
  name: '',
  who: 'mechanic',
  tools: [],
  minutes: 0,
  access: 'parked',
  hazards: [],
  cautions: [],
  steps: [],
  limits: [],
  results: [],
} as const;

function uniqueIds(file: SourceFile, list: string, entries: readonly { readonly id: string }[]): Set<string> {
  const lines = new Map<string, number>();
  entries.forEach(({ id }, i) => {
    const first = lines.get(id);
    if (first === undefined) lines.set(id, file.lineOf([list, i, 'id']));
    else
      file.error(
        'declared-twice',
        [list, i, 'id'],
        `"${id}" is declared already on line ${first}. Every id is declared once.`,
      );
  });
  return new Set(lines.keys());
}
