/** The program that opens photos could not be loaded: the fault is the service's, and no photo's. */
export class DecoderFault extends Error {
  constructor(cause: unknown) {
    super('The program that opens photos (sharp) could not be loaded. Install the packages on this machine (npm ci) and start the service again.', { cause })
    this.name = 'DecoderFault'
  }
}
