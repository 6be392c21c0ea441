declare module 'ml-cart' {
  export class DecisionTreeClassifier {
    constructor(options?: { gainFunction?: 'gini'; maxDepth?: number; minNumSamples?: number; gainThreshold?: number })
    train(rows: readonly (readonly number[])[], labels: readonly number[]): void
    toJSON(): { root: unknown }
  }
}
