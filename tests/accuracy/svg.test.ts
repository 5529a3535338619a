import { describe, expect, it } from 'vitest';
import { element, words } from './svg.js';

describe('element', () => {
  it('writes attributes, rounds numbers, and nests children', () => {
    expect(element('line', { x1: 1.23456, 'stroke-width': 2 })).toBe('<line x1="1.23" stroke-width="2"/>');
    expect(element('g', {}, [element('a', {}), element('b', {})])).toBe('<g>\n<a/>\n<b/>\n</g>');
  });

  it('escapes what would end a value or an element', () => {
    expect(words('text', { title: 'a "b" & <c>' }, '1 < 2 & 3')).toBe(
      '<text title="a &quot;b&quot; &amp; &lt;c&gt;">1 &lt; 2 &amp; 3</text>',
    );
  });
});
