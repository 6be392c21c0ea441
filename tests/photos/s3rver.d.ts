// What our tests use of s3rver, which brings no types.
declare module 's3rver' {
  interface Options {
    port: number
    address: string
    silent: boolean
    directory: string
    configureBuckets: { name: string; configs: string[] }[]
  }
  // eslint-disable-next-line no-restricted-syntax -- so the package has it
  export default class S3rver {
    constructor(options: Options)
    run(): Promise<{ address: string; port: number }>
    close(): Promise<void>
  }
}
