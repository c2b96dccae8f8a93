import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8, zipSync, type Zippable } from 'fflate';

/** The made-up tree that the guide to writing trees prints; the lint has nothing to say about it. */
export const SMALLEST_TREE = /^```yaml\n([^]*?)^```/m.exec(
  readFileSync(join(import.meta.dirname, '../trees/README.md'), 'utf8'),
)![1]!;

/** What a pack says of itself. */
export function packYaml(name = 'yard-notes', version = 1): string {
  return `format: droplight-pack/1\nname: ${name}\nversion: ${version}\n`;
}

/** A drawing with nothing wrong in it. */
export const DRAWING =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><title>Horn</title><path d="M2 10H38" stroke="currentColor"/></svg>\n';

/** Files of a pack that is in order: one tree, one drawing that it names. */
export function goodPack(name?: string, version?: number): Record<string, string> {
  const tree = SMALLEST_TREE.replace(
    /^teaching:/m,
    'pictures:\n  - { file: horn.svg, check: listen-at-horn, title: Where to listen, alt: A horn seen from the side }\n\nteaching:',
  );
  return {
    'pack.yaml': packYaml(name, version),
    'horn-stays-silent/tree.yaml': tree,
    'pictures/horn.svg': DRAWING,
  };
}

/** A zip of texts, in base64 as a window sends it. */
export function zipOf(files: Readonly<Record<string, string>>, more: Zippable = {}): string {
  const texts = Object.fromEntries(Object.entries(files).map(([path, text]) => [path, strToU8(text)]));
  return Buffer.from(zipSync({ ...texts, ...more })).toString('base64');
}
