import { defineConfig } from "vite";

const root = new URL("..", import.meta.url).pathname;

/** The server, and its worker beside it, as files that run on Node. Packages stay where npm put them. */
export default defineConfig({
  root,
  publicDir: false,
  build: {
    ssr: true,
    outDir: ".build/server",
    emptyOutDir: true,
    target: "node20",
    sourcemap: true,
    rollupOptions: {
      input: { main: "server/main.ts", worker: "server/threads/worker.ts" },
      output: { entryFileNames: "[name].js", chunkFileNames: "[name]-[hash].js" },
    },
  },
});
