import { faultName, type Fault } from '../../yard';

const isReturnContact = (fault: Fault): boolean =>
  'halfHome' in fault || /: plug return /.test(faultName(fault));

const joins = (fault: Fault): boolean =>
  'bridge' in fault || 'touching' in fault || 'crossed' in fault;

/** Why no reading shows a fault as the yard stands, in words. */
export function whyHidden(fault: Fault): string {
  if (isReturnContact(fault)) return 'Another contact of the return stands beside it.';
  if (joins(fault)) return 'What it joins or exchanges is joined anyway.';
  const breaks = ['stuckOpen', 'wireOff', 'linkBroken', 'highOhms'];
  return breaks.some((key) => key in fault)
    ? 'There is another way round it.'
    : 'Nothing in this yard depends on it.';
}
