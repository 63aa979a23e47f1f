import { visit } from 'unist-util-visit';

/** A figure and its unit stay on one line. */
const FIGURE = /(\d) (?=(?:V|A|Ω|mA|mm|%)(?!\w))/g;

const entities = { '{': '&#123;', '}': '&#125;', '<': '&lt;', '>': '&gt;', '&': '&amp;' };

/**
 * Remark plugin: prose stays prose. Without it a brace or an angle bracket in a lesson
 * would be run as code, and its author would not know why.
 */
export function literalProse() {
  return (/** @type {import('mdast').Root} */ tree) => {
    visit(tree, 'text', (node, index, parent) => {
      node.value = node.value.replace(FIGURE, '$1\u00a0');
      if (!/[{}<>]/.test(node.value) || !parent || index === undefined) return;
      const value = node.value.replace(/[{}<>&]/g, (c) => entities[c]);
      parent.children[index] = { type: 'html', value };
    });
  };
}
