import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { expect, test } from 'vitest';

const CORE = join(import.meta.dirname, '..', '..', '..', 'core');

/** What is no word of the program to a person at work: the API's description is an English document for who writes programs. */
const APART = ['api/endpoints.ts', 'api/openapi.ts'];

/** Three words in a row or more: no name, no key, no code. */
const SENTENCE = /[A-Za-z’]+[ ,:]+[A-Za-z’{}]+ [A-Za-z’{}]+/;

function textOf(node: ts.Node): string | null {
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) return node.text;
  if (!ts.isTemplateExpression(node)) return null;
  return [node.head.text, ...node.templateSpans.map(({ literal }) => literal.text)].join('{}');
}

/** The sentences of a file but for those of errors thrown: a broken invariant is told to whoever mends the program. */
function sentencesOf(node: ts.Node): string[] {
  if (ts.isThrowStatement(node)) return [];
  const text = textOf(node);
  const found = text !== null && SENTENCE.test(text) ? [text] : [];
  ts.forEachChild(node, (child) => {
    found.push(...sentencesOf(child));
  });
  return found;
}

test('no sentence stands in core but in its tables of words', () => {
  const files = readdirSync(CORE, { recursive: true, encoding: 'utf8' }).filter(
    (name) => name.endsWith('.ts') && !name.startsWith('words/') && !APART.includes(name),
  );
  expect(files.length).toBeGreaterThan(100);
  const found = files.flatMap((name) => {
    const source = readFileSync(join(CORE, name), 'utf8');
    const parsed = ts.createSourceFile(name, source, ts.ScriptTarget.Latest);
    return sentencesOf(parsed).map((text) => `${name}: ${text}`);
  });
  expect(found).toEqual([]);
});
