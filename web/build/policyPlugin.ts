/**
 * What the built page allows, and how it is served. Content-Security-Policy of the page: Scripts and workers come from the page's own folder
 * only and none may make code from text; nothing may be fetched or sent (`connect-src 'none'`).
 * Inline styles are allowed because plots and the editor place things by them; a style runs no code.
 */
import type { Plugin } from 'vite';

export const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "style-src 'self' 'unsafe-inline'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "connect-src 'none'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
].join('; ');

export function policyPlugin(): Plugin {
  return {
    name: 'trumpetry-policy',
    apply: 'build',
    transformIndexHtml: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
        injectTo: 'head-prepend',
      },
    ],
  };
}

/**
 * Headers of the server on this machine. The policy above stands in the page; who may frame it can be said
 * by a header alone. A header with the whole would hold for worker threads too, which compile the solver.
 */
export const HEADERS = {
  'Content-Security-Policy': "frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Referrer-Policy': 'no-referrer',
} as const;

/** Says that the development server is one. */
export function developmentPlugin(): Plugin {
  return {
    name: 'trumpetry-development',
    apply: 'serve',
    configureServer: ({ config }) => {
      config.logger.warn(
        'The development server: for work on the page, without its policy. To use it: npm run page',
      );
    },
  };
}
