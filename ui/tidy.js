// Rules of the screens that no compiler holds: colours and sizes stand in tokens.css alone, every word comes from the
// catalogue, parts know no screens, and only lib/backend knows the shell. Run by `npm run lint`.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'svelte/compiler';

const breaches = [];

function walk(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? (entry.name === 'generated' ? [] : walk(path)) : [path];
  });
}

const COLOUR = /#[0-9a-f]{3,8}\b|\b(rgb|hsl|oklch|oklab|lab|lch|hwb)a?\(/i;
// A line of a pixel, or nothing, is not a measure; the width at which the page becomes a spread cannot be a variable.
const SIZE = /(?<![\w.-])(?!0(?:px|rem)\b)\d*\.?\d+(px|rem|vw|vh|dvh)\b/;

function holdStyles(path, css) {
  for (const [idx, line] of css.split('\n').entries()) {
    if (line.includes('@media') || line.trim().startsWith('*') || line.trim().startsWith('/*')) continue;
    if (COLOUR.test(line)) breaches.push(`${path}: style line ${idx + 1}: a colour outside tokens.css: ${line.trim()}`);
    const size = SIZE.exec(line.replaceAll('100dvh', ''));
    if (size) breaches.push(`${path}: style line ${idx + 1}: a size outside tokens.css: ${line.trim()}`);
  }
}

const SHOWN_ATTRIBUTES = new Set(['aria-label', 'title', 'placeholder', 'alt', 'label', 'hint', 'more', 'heading']);

function holdWords(path, node) {
  if (Array.isArray(node)) {
    for (const child of node) holdWords(path, child);
    return;
  }
  if (typeof node !== 'object' || node === null) return;
  if (node.type === 'Text' && /\p{L}/u.test(node.data)) breaches.push(`${path}: a word typed in: ${node.data.trim()}`);
  if (node.type === 'Attribute') {
    if (!SHOWN_ATTRIBUTES.has(node.name)) return;
    if (node.value === true) return;
  }
  for (const [name, child] of Object.entries(node)) {
    if (
      ['expression', 'test', 'key', 'context', 'metadata', 'options'].includes(name) &&
      node.type !== 'SnippetBlock'
    ) {
      continue;
    }
    holdWords(path, child);
  }
}

for (const path of walk('src')) {
  const text = readFileSync(path, 'utf8');
  if (path.endsWith('.svelte')) {
    const tree = parse(text, { modern: true, filename: path });
    holdWords(path, tree.fragment);
    if (tree.css) holdStyles(path, tree.css.content.styles);
    if (!text.startsWith('<!--')) breaches.push(`${path}: does not open with what it is for`);
  } else if (path.endsWith('.css')) {
    if (!path.endsWith('tokens.css')) holdStyles(path, text);
  } else if (path.endsWith('.ts') && !text.startsWith('//')) {
    breaches.push(`${path}: does not open with what it is for`);
  }
  if (path.startsWith(join('src', 'parts')) && /from '[^']*screens\//.test(text)) {
    breaches.push(`${path}: a part that knows a screen`);
  }
  if (!path.startsWith(join('src', 'lib', 'backend')) && /from '@tauri-apps|fetch\('/.test(text)) {
    breaches.push(`${path}: only lib/backend may know the shell or the network`);
  }
  if (text.split('\n').length >= 500) breaches.push(`${path}: 500 lines or more`);
}

if (breaches.length > 0) {
  console.error(breaches.join('\n'));
  console.error(`${breaches.length} breaches`);
  process.exit(1);
}
console.log('tidy: nothing stands where it should not');
