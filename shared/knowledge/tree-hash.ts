/**
 * The text that identifies a tree together with its vocabulary: every file's name and content, names sorted, lengths
 * written before each part so that no two sets of files give the same text. The machine side hashes it with SHA-256.
 */
export function hashText(files: Readonly<Record<string, string>>): string {
  return Object.keys(files)
    .sort()
    .map((name) => `${name.length}:${name}${files[name]!.length}:${files[name]!}`)
    .join('');
}
