import { CircuitError, shown } from './errors';
import type { CircuitErrorCode } from './errors';
import { kindNames, kindOf, nameOf } from './kinds';
import type { Circuit, Element } from './kinds';
import type { Field, Kind, Rule } from './kinds/kind';

type Loose = Record<string, unknown>;

const wanted: Record<Rule, string> = {
  positive: 'It must be above 0',
  natural: 'It must be 0 or more',
  finite: 'It must be a finite number',
  boolean: 'It must be true or false'
};

/** Sizes beyond which a product of a few could leave the range of a double; far from any circuit. */
const least = 1e-60;
const most = 1e30;

const fits: Record<Rule, (value: number) => boolean> = {
  positive: (value) => value > 0,
  natural: (value) => value >= 0,
  finite: () => true,
  boolean: () => false
};

/** EMFs and currents may come as near to 0 as they like. */
const inRange = (value: number, rule: Rule): boolean =>
  Math.abs(value) <= most && (rule === 'finite' || value === 0 || Math.abs(value) >= least);

/**
 * Throws a `CircuitError` naming the first element and field that is wrong, if any is.
 *
 * @example
 * checkCircuit({ ground: '0', elements: [] }) // Circuit: ground '0' is on no element. …
 */
export function checkCircuit(circuit: Circuit): void {
  const loose = circuit as unknown;
  if (!isRecord(loose)) shape('Circuit', loose, 'It must be { ground, elements }.');
  if (!Array.isArray(loose.elements)) {
    shape('Circuit', loose.elements, 'elements must be a list of elements.', 'elements');
  }
  const seen = new Set<string>();
  loose.elements.forEach((element: unknown, index) => checkElement(element, index, seen));
  checkGround(circuit);
}

function checkGround({ ground, elements }: Circuit): void {
  if (typeof ground === 'string' && elements.some(({ a, b }) => a === ground || b === ground))
    return;
  throw new CircuitError({
    code: 'ground',
    where: 'Circuit',
    met: `ground ${shown(ground)} is on no element`,
    allowed: 'It must be a node of the circuit: give ground.',
    field: 'ground'
  });
}

function checkElement(element: unknown, index: number, seen: Set<string>): void {
  const place = `Element ${String(index + 1)}`;
  if (!isRecord(element)) shape(place, element, 'It must be an object with kind, id, a and b.');
  const { kind: kindName, id } = element;
  const kind = typeof kindName === 'string' ? kindOf(kindName) : undefined;
  const label = typeof id === 'string' && id !== '' ? id : `number ${String(index + 1)}`;
  if (kind === undefined) {
    const allowed = `kind must be one of ${kindNames.join(', ')}.`;
    fail('kind', `Element ${label}`, `kind ${shown(kindName)}`, allowed, 'kind');
  }
  const where = `${kind.noun} ${label}`;
  if (typeof id !== 'string' || id === '') {
    fail(
      'id',
      where,
      `id ${shown(id)}`,
      'It must be a text of at least one letter: give id.',
      'id'
    );
  }
  if (seen.has(id)) {
    fail(
      'id',
      where,
      `id ${shown(id)} is used twice`,
      'Each id must be used once: change id.',
      'id'
    );
  }
  seen.add(id);
  for (const end of ['a', 'b']) checkEnd(element[end], end, where);
  checkFields(element, kind, where);
}

function checkEnd(node: unknown, end: string, where: string): void {
  if (typeof node === 'string' && node !== '') return;
  fail(
    'node',
    where,
    `${end} is ${shown(node)}`,
    `It must be the name of a node: give ${end}.`,
    end
  );
}

function checkFields(element: Loose, kind: Kind, where: string): void {
  for (const field of kind.fields) checkField(element[field.name], field, where);
}

/** Throws when the value of one field is not what its rule asks for. */
export function checkField(value: unknown, field: Field, owner: string | Element): void {
  if (value === undefined && field.optional) return;
  const { name, rule, unit } = field;
  if (typeof value === 'number' && fits[rule](value) && inRange(value, rule)) return;
  if (typeof value === 'boolean' && rule === 'boolean') return;
  const where = typeof owner === 'string' ? owner : nameOf(owner);
  const allowed = `${wanted[rule]}: give ${name}.`;
  if (rule === 'boolean' || typeof value !== 'number') {
    fail('shape', where, `${name} is ${shown(value)}`, allowed, name);
  }
  const met = unit === '' ? `${name} ${shown(value)}` : shown(value, unit);
  if (!Number.isFinite(value)) fail('number', where, met, allowed, name);
  const sizes = `Its size must be from ${String(least)} to ${String(most)}: give ${name}.`;
  fail('range', where, met, fits[rule](value) ? sizes : allowed, name);
}

function isRecord(value: unknown): value is Loose {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function shape(where: string, met: unknown, allowed: string, field?: string): never {
  throw new CircuitError({ code: 'shape', where, met: shown(met), allowed, field });
}

// eslint-disable-next-line max-params -- one place that builds every fault of an element
function fail(
  code: CircuitErrorCode,
  where: string,
  met: string,
  allowed: string,
  field: string
): never {
  throw new CircuitError({ code, where, met, allowed, field });
}
