import { expect, it, vi } from 'vitest'
import { DecoderFault, preparePhoto } from '../../src/photos/index.js'

// The one part that cannot be made to fail for real: a library built for another machine, as after copying node_modules.
vi.mock('sharp', () => { throw new Error('Could not load the "sharp" module') })

it('is the service\'s fault, and no photo\'s, when the program that opens photos cannot be loaded', async () => {
  const begun = Buffer.from([0xff, 0xd8, 0xff, 0xe0])
  for (let photo = 0; photo < 2; photo++) {
    const fault = await preparePhoto(begun).catch((thrown: unknown) => thrown)
    expect(fault).toBeInstanceOf(DecoderFault)
    expect(fault).toMatchObject({ message: expect.stringContaining('npm ci') as string })
  }
})
