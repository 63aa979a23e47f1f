import { createHash } from 'node:crypto';
import { allPaths } from './lessons';
import { visit } from './step';
import { expect, test } from './test';

const pages = [...allPaths, '/404.html'];

/** Directives of a page's policy: name, then what it lets in. */
function policyOf(html: string): ReadonlyMap<string, readonly string[]> {
  const text = /<meta http-equiv="content-security-policy" content="([^"]+)"/i.exec(html)?.[1];
  const directives = (text ?? '').split(';').map((each) => each.trim().split(/\s+/));
  return new Map(directives.map(([name, ...sources]) => [name ?? '', sources]));
}

const hashOf = (script: string): string =>
  `'sha256-${createHash('sha256').update(script).digest('base64')}'`;

for (const path of pages) {
  test(`${path} lets in nothing but its own files`, async ({ request }) => {
    const html = await (await request.get(path)).text();
    const policy = policyOf(html);
    expect(policy.get('default-src')).toEqual(["'none'"]);
    for (const [name, sources] of policy) {
      const strange = sources.filter((each) => !/^'(none|self|sha256-.+)'$|^data:$/.test(each));
      // Boards set sizes in style attributes; nothing else may be written into a page.
      const known = name === 'style-src-attr' ? ["'unsafe-inline'"] : [];
      expect(strange, name).toEqual(known);
    }
    expect(policy.get('script-src')).toContain("'self'");
    expect(policy.get('base-uri')).toEqual(["'self'"]);
    expect(policy.get('form-action')).toEqual(["'none'"]);
    expect(policy.get('connect-src')).toEqual(["'self'"]);
    const inline = [...html.matchAll(/<script>([\s\S]*?)<\/script>/g)].map(
      ([, code]) => code ?? ''
    );
    expect(inline.length).toBeGreaterThan(0);
    for (const script of inline) expect(policy.get('script-src')).toContain(hashOf(script));
    const meta = html.indexOf('content-security-policy');
    expect(html.indexOf('<script')).toBeGreaterThan(meta);
    expect(html.match(/\b(?:src|href)="(?:https?:)?\/\/[^"]*"/g)).toBeNull();
    expect(html.match(/\son[a-z]+="/g)).toBeNull();
  });
}

test.describe('who tries all the same', () => {
  test.use({ allowed: /policy|Refused|violates|Content Security Policy/i });

  test('is refused: a script put in the page, a call to elsewhere', async ({ page, troubles }) => {
    await visit(page, '/');
    const done = await page.evaluate(async () => {
      const script = document.createElement('script');
      script.textContent = 'globalThis.slipped = true';
      document.head.append(script);
      const elsewhere = await fetch('https://192.0.2.1/').then(
        () => 'answered',
        () => 'refused'
      );
      return { slipped: 'slipped' in globalThis, elsewhere };
    });
    expect(done).toEqual({ slipped: false, elsewhere: 'refused' });
    expect(troubles.join('\n')).toMatch(/script-src/);
    expect(troubles.join('\n')).toMatch(/connect-src/);
  });
});
