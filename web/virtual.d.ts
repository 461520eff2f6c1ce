declare module 'virtual:demos' {
  export const shipped: import('./state/demos.ts').Demo[];
}

declare module 'plotly.js-dist-min' {
  export * from 'plotly.js';
}

declare module '*.css';
