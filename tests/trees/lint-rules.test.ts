import { describe, expect, it } from 'vitest';
import {
  EXCEPTION_CODES,
  formatProblem,
  inFileOrder,
  LINT_RULES,
  lintTree,
  readTree,
} from '../../shared/knowledge/index.ts';
import { casesOf, fixture, fixtureVocabulary } from './fixtures.ts';

const vocabulary = fixtureVocabulary().value!;
const codes = [...LINT_RULES.map(({ code }) => code), ...EXCEPTION_CODES];

/** Everything that the lint says about one file of a case, as printed. The file itself must read without a fault. */
function said(code: string, name: 'bad.yaml' | 'good.yaml'): string {
  const file = `lint/${code}/${name}`;
  const text = fixture(file);
  if (text === null) throw new Error(`tests/trees/${file} is missing. Every rule has a bad and a good tree.`);
  const { value, source, problems } = readTree({ treeYaml: text, file, vocabulary });
  if (!value) throw new Error(`${file} cannot be read:\n${problems.map(formatProblem).join('\n')}`);
  return inFileOrder([...problems, ...lintTree(value, vocabulary, source)])
    .map((problem) => `${formatProblem(problem)}\n`)
    .join('');
}

it('[KNO-8] every rule has a folder of its own under tests/trees/lint, and every folder a rule', () => {
  expect(casesOf('lint')).toEqual([...codes].sort());
  expect(new Set(codes).size).toBe(codes.length);
});

const rules = codes.map((code): [string, string] => [
  EXCEPTION_CODES.some((each) => each === code) ? 'KNO-9' : 'KNO-7',
  code,
]);

describe.each(rules)('[%s] %s', (_, code) => {
  it('says exactly what expected.txt says about the bad tree, with file, line and column', () => {
    const message = said(code, 'bad.yaml');
    expect(message).toBe(fixture(`lint/${code}/expected.txt`));
    const level = LINT_RULES.find((rule) => rule.code === code)?.level ?? 'error';
    expect(message).toMatch(new RegExp(`^lint/${code}/bad\\.yaml:\\d+:\\d+ ${level} ${code}: `));
  });
  it('is silent about the good tree, which differs in that one thing', () => {
    expect(said(code, 'good.yaml')).toBe('');
  });
});
