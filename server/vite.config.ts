import { defineConfig } from "vite";

const root = new URL("..", import.meta.url).pathname;

/** The server as one file that runs on Node; packages stay where npm put them. */
export default defineConfig({
  root,
  publicDir: false,
  build: {
    ssr: "server/main.ts",
    outDir: ".build/server",
    emptyOutDir: true,
    target: "node20",
    sourcemap: true,
    rollupOptions: { output: { entryFileNames: "main.js" } },
  },
});
