import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { unsafeDrawing } from '../../../shared/knowledge/pack/unsafe-drawing.ts';
import { topFolder } from '../../../shared/knowledge/pack/pack-paths.ts';

const pictures = join(import.meta.dirname, '../../../trees/pictures');

it('takes every drawing that comes with the program', () => {
  const names = readdirSync(pictures).filter((name) => name.endsWith('.svg'));
  expect(names.length).toBeGreaterThan(100);
  const refused = names.flatMap((name) => {
    const part = unsafeDrawing(readFileSync(join(pictures, name), 'utf8'));
    return part ? [`${name}:${part.line} ${part.message}`] : [];
  });
  expect(refused).toEqual([]);
});

it.each([
  ['<svg>\n\n<path onclick="x"/></svg>', 3],
  ['<svg xmlns="http://www.w3.org/2000/svg" xmlns:a="urn:b"/>', 1],
  ['<svg><path fill=url(#a) /></svg>', 1],
  ['<svg>\n<style>a{fill:\\75rl(//x.example)}</style></svg>', 2],
  ['<svg><style>a{background:image-set("//x.example" 1x)}</style></svg>', 1],
  ['<svg><style><g/></style></svg>', 1],
  ['<svg><!-- a -- b --></svg>', 1],
  ['<svg><use href="#a"/></svg>', 1],
  ['<svg><animate attributeName="href" to="javascript:x"/></svg>', 1],
  ['<?xml-stylesheet href="//x.example"?><svg/>', 1],
  ['', 1],
])('refuses %s at its line', (svg, line) => {
  expect(unsafeDrawing(svg)?.line).toBe(line);
});

it('finds the one folder that a zipped folder lies in, and no other', () => {
  expect(topFolder(['My Pack/pack.yaml', 'My Pack/a/tree.yaml'])).toBe('My Pack/');
  expect(topFolder(['pack.yaml', 'a/tree.yaml'])).toBe('');
  expect(topFolder(['a/pack.yaml', 'b/tree.yaml'])).toBe('');
  expect(topFolder(['a/b/pack.yaml', 'a/b/tree.yaml'])).toBe('');
});
