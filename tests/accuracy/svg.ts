type Attributes = Readonly<Record<string, string | number>>;

/** One element of an SVG as text. Its children are elements, already written. */
export function element(name: string, attributes: Attributes, children: readonly string[] = []): string {
  const written = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${escaped(typeof value === 'number' ? rounded(value) : value)}"`)
    .join('');
  return children.length === 0
    ? `<${name}${written}/>`
    : `<${name}${written}>${children.length === 1 ? (children[0] ?? '') : `\n${children.join('\n')}\n`}</${name}>`;
}

/** An element that holds nothing but words. */
export function words(name: string, attributes: Attributes, content: string): string {
  return element(name, attributes, [escaped(content)]);
}

/** Hundredths of a unit are finer than any print shows. */
export function rounded(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}
