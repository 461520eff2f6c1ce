/**
 * Content-Security-Policy of the built page. Scripts and workers come from the page's own folder
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
