export * from './weather/index.js'
