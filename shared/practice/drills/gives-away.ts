/** Letters and digits alone, lower case, single blanks: "Bush worn," and "bush  worn" are the same. */
function plain(text: string): string {
  return ` ${(text.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? []).join(' ')} `;
}

/** Whether an answer is written out in a question, word for word. */
export function givesAway(question: string, answer: string): boolean {
  const words = plain(answer);
  return words.trim() !== '' && plain(question).includes(words);
}
