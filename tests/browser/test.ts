import { test as base, expect } from '@playwright/test';

interface Options {
  /** What the console may say in these tests; nothing as a rule. */
  readonly allowed: RegExp;
}

interface Watch {
  /** Every error, every break of the policy and every request to elsewhere; empty after each test. */
  readonly troubles: string[];
}

/** The runner's own word; only the tests of working offline let the worker in. */
const runnersWord = /^console: Service Worker registration blocked/;

const isElsewhere = (url: string, home: string): boolean =>
  /^(https?|wss?):$/.test(new URL(url).protocol) && new URL(url).origin !== home;

/** A test on the built site that fails when the page complains, or asks for anything from elsewhere. */
export const test = base.extend<Options & Watch>({
  allowed: [/(?!)/, { option: true }],
  baseURL: process.env.OHMYARD_URL ?? '',
  serviceWorkers: 'block',
  troubles: [
    async ({ context, baseURL, allowed }, use) => {
      const troubles: string[] = [];
      const home = new URL(baseURL as string).origin;
      context.on('console', (message) => {
        if (message.type() === 'error' || message.type() === 'warning') {
          troubles.push(`console: ${message.text()}`);
        }
      });
      context.on('weberror', (error) => troubles.push(`error: ${error.error().message}`));
      context.on('request', (request) => {
        if (isElsewhere(request.url(), home)) troubles.push(`request: ${request.url()}`);
      });
      await context.addInitScript(() => {
        document.addEventListener('securitypolicyviolation', (event) => {
          console.error(`policy: ${event.violatedDirective} refused ${event.blockedURI}`);
        });
      });
      await use(troubles);
      const bad = troubles.filter((each) => !allowed.test(each) && !runnersWord.test(each));
      expect(bad, 'the page complains of nothing and asks nobody else').toEqual([]);
    },
    { auto: true }
  ]
});

export { expect };
