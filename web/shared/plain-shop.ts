import type { Settings } from '#wire';

/** Until the server has told how this shop speaks. */
export const plainShop: Settings = {
  name: '',
  lengthUnit: 'in',
  spelling: 'british',
  sides: { left: 'left', right: 'right' },
};
