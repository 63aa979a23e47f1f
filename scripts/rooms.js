/** The rooms of src/lib from left to right: a room imports only from its left. */
export const rooms = [
  'tables',
  'circuit',
  'yard',
  'motion',
  'predict',
  'hunt',
  'checks',
  'book',
  'share',
  'lesson',
  'walk',
  'draw',
  'ui'
];
