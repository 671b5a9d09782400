import adapter from '@sveltejs/adapter-static';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

/** @type {import('@sveltejs/kit').Config} */
export default {
  preprocess: vitePreprocess(),
  kit: {
    adapter: adapter({ pages: 'build/site', assets: 'build/site', fallback: '404.html' }),
    paths: { relative: true },
    // Registered by the layout, which waits for a yes before a newer version takes over.
    serviceWorker: { register: false },
    typescript: {
      config: (config) => ({
        ...config,
        include: [...config.include, '../test/**/*.ts', '../.config/*.js', '../vite.config.ts']
      })
    },
    // The same policy is sent as a header by `npm start` (src/cli/serve.ts), so that workers,
    // which do not inherit a page's meta policy, are held to it as well.
    csp: {
      mode: 'hash',
      directives: {
        'default-src': ['none'],
        'script-src': ['self'],
        'worker-src': ['self'],
        'style-src': ['self'],
        // The one style attribute that SvelteKit writes, by its hash: its announcer of page titles
        // for screen readers is kept out of sight with it.
        'style-src-attr': ['unsafe-hashes', 'sha256-S8qMpvofolR8Mpjy4kQvEm7m1q8clzU4dfDH0AmvZjo='],
        'img-src': ['self', 'blob:', 'data:'],
        'font-src': ['self'],
        'connect-src': ['self'],
        'manifest-src': ['self'],
        'base-uri': ['none'],
        'form-action': ['none']
      }
    }
  }
};
