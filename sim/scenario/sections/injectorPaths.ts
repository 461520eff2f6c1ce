/** Where a scenario has its injectors. */
export const SECTION = 'injectors';
export const EACH = `${SECTION}.each`;
export const STAGING = `${SECTION}.staging`;
