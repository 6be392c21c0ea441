// The arrows of the design, as rules. A test breaks one on purpose and sees this refuse.
const room = (name) => `^src/${name}/`

/** Each room with the only rooms (and shared/) that it may import. */
const mayImport = {
  guide: ['guide'],
  match: ['match', 'guide'],
  season: ['season', 'guide'],
  engine: ['engine', 'season', 'guide'],
  store: ['store'],
  mail: ['mail'],
  photos: ['photos'],
  desk: ['desk', 'engine', 'season', 'match', 'guide', 'store', 'mail', 'photos', 'shared'],
  http: ['http', 'desk', 'engine', 'match', 'season', 'guide', 'store', 'mail', 'photos', 'web/plain', 'shared'],
  web: ['web', 'shared'],
  shared: ['shared'],
}

const folder = (name) => (name === 'shared' ? '^shared/' : room(name))

module.exports = {
  forbidden: [
    ...Object.entries(mayImport).map(([from, to]) => ({
      name: `${from}-imports-only-${to.join('-').replaceAll('/', '-')}`,
      severity: 'error',
      comment: `${from} may import only ${to.join(', ')}`,
      from: { path: folder(from) },
      to: { path: '^(src|shared)/', pathNot: to.map(folder) },
    })),
    {
      name: 'pure-rooms-touch-nothing-outside',
      severity: 'error',
      comment: 'guide, match, season and engine have no store, network, log or clock; only guide reads files',
      from: { path: '^src/(match|season|engine)/' },
      to: { path: '^(node:)?(fs|net|http|https|child_process|os|timers)|node_modules/(express|pino|kysely|better-sqlite3|nodemailer)' },
    },
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    { name: 'no-tests-in-source', severity: 'error', from: { path: '^(src|shared)/' }, to: { path: '^tests/' } },
  ],
  options: {
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.mjs', '.js'], exportsFields: ['exports'], conditionNames: ['import', 'node', 'default', 'types'] },
  },
}
