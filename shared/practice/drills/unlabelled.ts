/**
 * A drawing without a word: labels, title and description are taken out, lines stay. For asking what it shows.
 *
 * @param svg  a drawing as the trees bring it: flat, texts in <text>, <title> and <desc> alone.
 */
export function unlabelled(svg: string): string {
  return svg.replace(/<(text|title|desc)\b[^>]*?(?:\/>|>[\s\S]*?<\/\1>)/g, '');
}
