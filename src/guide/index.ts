export type * from './guide.js'
export { CANT_LOOK, NOT_SURE, problemKinds } from './guide.js'
