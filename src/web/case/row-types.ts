import type { ComplaintRows, HostRows } from '../../../shared/index.js'

export type HostRow = HostRows['hosts'][number]
export type ComplaintRow = ComplaintRows['complaints'][number]
