import * as v from 'valibot';

/** A finite number with a unit and a stated range. */
export const quantity = (least: number, most: number, unit: string) => {
  const allowed = `${least} to ${most} ${unit}`;
  return v.pipe(
    v.number(allowed),
    v.finite(allowed),
    v.minValue(least, allowed),
    v.maxValue(most, allowed)
  );
};

/** A whole number of things within a stated range. */
export const count = (least: number, most: number, what: string) => {
  const allowed = `${least} to ${most} ${what}`;
  return v.pipe(
    v.number(allowed),
    v.integer(allowed),
    v.minValue(least, allowed),
    v.maxValue(most, allowed)
  );
};

/** Where a value breaks its schema. */
export interface Finding {
  /** Keys from the outside in, such as ['supply', 'volts']. */
  readonly path: readonly (string | number)[];
  readonly met: string;
  readonly allowed: string;
}

/** A value from outside that does not fit; it names each place, what was met and what is allowed. */
export class BorderError extends Error {
  readonly code = 'does-not-fit';
  constructor(
    readonly what: string,
    readonly findings: readonly Finding[]
  ) {
    super(
      findings
        .map((f) => `${[what, ...f.path].join(' › ')}: met ${f.met}, allowed: ${f.allowed}.`)
        .join('\n')
    );
    this.name = 'BorderError';
  }
}

/** The value as it was met, short enough to read. */
export function met(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

type Issue = v.BaseIssue<unknown>;

function finding(issue: Issue): Finding {
  const path = (issue.path ?? []).map((item) => item.key as string | number);
  const extra = issue.type === 'strict_object' && issue.expected === 'never';
  return {
    path,
    met: extra ? `the unknown key '${String(path.at(-1))}'` : met(issue.input),
    allowed: extra ? 'the keys of this form only' : allowed(issue)
  };
}

/** The library's own messages begin with 'Invalid'; ours say what is allowed. */
function allowed(issue: Issue): string {
  if (!issue.message.startsWith('Invalid')) return issue.message;
  const missing = issue.type === 'strict_object' && issue.input === undefined;
  return missing ? 'a value: it must be given' : (issue.expected ?? 'another value');
}

/**
 * Lets `value` in through `schema`, defaults filled in.
 * @throws BorderError naming each place that does not fit.
 */
export function admit<S extends v.GenericSchema>(
  what: string,
  schema: S,
  value: unknown
): v.InferOutput<S> {
  const result = v.safeParse(schema, value);
  if (result.success) return result.output;
  throw new BorderError(what, result.issues.map(finding));
}
