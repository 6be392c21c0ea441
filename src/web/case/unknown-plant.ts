/** The tree for plants that nobody can name, as the guide spells it: always within reach, whatever was heard or typed. */
export const UNKNOWN_PLANT = 'unknown-plant'
