/**
 * Before every file of component tests: what this document takes longest over is the name of a button or a field, for
 * which it works out the whole style of every element within, from two hundred rules of its own sheet. Those are the only
 * rules here (the window's own style sheets are not read), and they look at an element, at what it stands in, and at their
 * attributes. Elements that are alike in that share one answer.
 */
/** The style of an element, worked out anew. */
export const workedOut = window.getComputedStyle.bind(window);
const known = new Map<string, CSSStyleDeclaration>();

/** No rule of the sheet names one of these. */
const UNNAMED = /^(class|id|for|role|tabindex|d|aria-.*)$/;

/** What the sheet's rules can see of an element. */
function seen(element: Element): string {
  const attributes = element
    .getAttributeNames()
    .filter((name) => !UNNAMED.test(name))
    .map((name) => `${name}=${JSON.stringify(element.getAttribute(name))}`);
  return `${element.localName} ${attributes.join(' ')}`;
}

window.getComputedStyle = (element: Element, pseudo?: string | null): CSSStyleDeclaration => {
  const path: string[] = [];
  for (let each: Element | null = element; each; each = each.parentElement) path.push(seen(each));
  const plain =
    (pseudo ?? '') === '' &&
    element.isConnected &&
    element.ownerDocument === document &&
    document.styleSheets.length === 0 &&
    // The one element whose style depends on those beside it.
    !path.some((each) => each.startsWith('summary '));
  if (!plain) return workedOut(element, pseudo);
  const key = path.join('\n');
  let style = known.get(key);
  if (!style) known.set(key, (style = workedOut(element)));
  return style;
};
