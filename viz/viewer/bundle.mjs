// Bundles the viewer into bundle/: one script, one style sheet, and the licences of what is inside.
import { mkdir, readFile, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const here = dirname(fileURLToPath(import.meta.url));
const out = join(here, "bundle");

const made = await build({
  absWorkingDir: here,
  entryPoints: { viewer: "src/main.ts" },
  outdir: out,
  bundle: true,
  minify: true,
  format: "iife",
  target: "es2020",
  charset: "utf8",
  legalComments: "none",
  metafile: true,
  write: false,
  logLimit: 5,
});

/** The packages that stand in the bundle, by name. */
function bundled(inputs) {
  const found = Object.keys(inputs).map((path) =>
    /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path),
  );
  return [...new Set(found.filter(Boolean).map((match) => match[1]))].sort();
}

async function notice(name) {
  const folder = join(here, "node_modules", name);
  const about = JSON.parse(await readFile(join(folder, "package.json"), "utf8"));
  const licence = await readFile(join(folder, "LICENSE"), "utf8");
  return `${name} ${about.version} (${about.license})\n\n${licence.trim()}\n`;
}

const notices = await Promise.all(bundled(made.metafile.inputs).map(notice));
const text = `This script contains the following libraries.\n\n${notices.join("\n---\n\n")}`;
await mkdir(out, { recursive: true });
await writeFile(join(out, "LICENSES.txt"), text);
for (const file of made.outputFiles) {
  const script = file.path.endsWith(".js");
  // The licences ask to go wherever the script goes.
  const head = script ? `/*!\n${text.replaceAll("*/", "* /")}*/\n` : "";
  await writeFile(file.path, head + file.text);
}
